"""The commands. Each is a few lines: what a command does lives in the rooms, imported when it is called."""

import os
import sys
from pathlib import Path

import click

from layerfolio import __version__
from layerfolio.problems import Problem, ProblemsFound
from layerfolio.writing import CannotWrite, check_target

PROJECT = click.argument("project", type=click.Path(path_type=Path))
OUTPUT_HELP = "Where to write; beside the project file when left out."


class Commands(click.Group):
    """Every mistake of the user ends in a sentence and exit code 2, never in a traceback."""

    def invoke(self, ctx: click.Context):
        try:
            return super().invoke(ctx)
        except ProblemsFound as found:
            for problem in found.problems:
                click.echo(str(problem), err=True)
            for caution in found.to_look_at:
                click.echo(str(caution), err=True)
        except BrokenPipeError:
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # the reader has gone: nothing is left to say
            ctx.exit(0)
        except OSError as error:
            click.echo(str(_file_problem(error)), err=True)
        ctx.exit(2)

    def resolve_command(self, ctx: click.Context, args: list[str]):
        try:
            return super().resolve_command(ctx, args)
        except click.UsageError as error:
            from difflib import get_close_matches

            near = get_close_matches(args[0], self.list_commands(ctx), 1, 0.5)
            hint = f" Did you mean {near[0]!r}?" if near else ""
            raise click.UsageError(f"{error.message.rstrip('.')}.{hint}", ctx) from None


def _file_problem(error: OSError) -> Problem:
    if isinstance(error, CannotWrite):
        target, _, words = str(error).partition(" cannot be written: ")
        return Problem(target, 0, 0, "", f"cannot be written: {words}", "a folder that exists and that you may write")
    return Problem(str(error.filename or "layerfolio"), 0, 0, "", f"cannot be read: {error.strerror or error}")


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="layerfolio")
def main() -> None:
    """From a project file of layered walls, roofs and floors to an inspection-ready PDF package.

    A licensed professional and the authority having jurisdiction have the final say.
    """


@main.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--starter", default="wall", show_default=True, help="Which starter; see: layerfolio list starters")
def new(folder: Path, starter: str) -> None:
    """Write a commented starter project that builds as it stands."""
    from layerfolio.starters import write_starter

    click.echo(f"wrote {write_starter(folder, starter)}")


@main.command()
@PROJECT
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True)
@click.option("--strict", is_flag=True, help="Exit code 1 when a finding does not meet.")
def check(project: Path, form: str, strict: bool) -> None:
    """Validate and calculate; print results and findings."""
    from layerfolio.dossier import compile_dossier, open_project

    loaded = open_project(project)
    dossier = compile_dossier(loaded)
    if form == "json":
        import json

        from layerfolio.results import results

        click.echo(json.dumps(results(dossier), ensure_ascii=False, indent=1, allow_nan=False))
    else:
        from layerfolio.terminal import WIDE, summary

        click.echo(summary(dossier, loaded.problem_at, WIDE))
    if strict and any(f.verdict == "does not meet" and not f.answered_by for f in dossier.findings):
        sys.exit(1)


@main.command()
@PROJECT
@click.option("--output", "-o", type=click.Path(path_type=Path), help=OUTPUT_HELP)
def build(project: Path, output: Path | None) -> None:
    """Write the PDF package."""
    from layerfolio.binding import bind
    from layerfolio.dossier import compile_dossier, open_project
    from layerfolio.sheets.package import package
    from layerfolio.terminal import after_build

    loaded = open_project(project)
    target = output or loaded.files[0].with_suffix(".pdf")
    check_target(target, (".pdf",), loaded.inputs)
    dossier = compile_dossier(loaded)
    bound = bind(package(dossier), target)
    click.echo(f"wrote {target}: {len(bound.sheets)} sheets, {bound.pages} pages")
    click.echo(after_build(dossier, loaded.problem_at))


@main.command()
@PROJECT
@click.argument("assembly")
@click.option(
    "--output", "-o", type=click.Path(path_type=Path), help="FILE.svg, FILE.pdf or FILE.dxf; ASSEMBLY.svg when left out."
)
@click.option("--scale", help="5, 1:5 or 1-1/2\"; the largest that fits when left out.")
@click.option("--view", type=click.Choice(["plan", "vertical"]), help="Which way a wall is cut; plan when left out.")
@click.option("--hatch", type=click.Choice(["full", "light"]), default="full", show_default=True, help="How dense hatches are.")
def draw(project: Path, assembly: str, output: Path | None, scale: str | None, view: str | None, hatch: str) -> None:
    """Draw one assembly (W1) or junction (D1) to SVG, PDF or DXF."""
    from layerfolio.dossier import compile_dossier, open_project
    from layerfolio.drawing.outputs import ENDINGS, NoWriter, draw_to
    from layerfolio.drawing.written_scale import BadScale, scale_of
    from layerfolio.drawn import NoView, Wish, drawn

    try:
        wish = Wish(scale_of(scale) if scale else None, view, hatch == "light")
        loaded = open_project(project)
        drawing = drawn(compile_dossier(loaded), assembly, wish)
        if drawing is None:
            raise ProblemsFound([loaded.unknown_assembly(assembly)])
        target = output or loaded.files[0].with_name(f"{assembly}.svg")
        check_target(target, ENDINGS, loaded.inputs)
        draw_to(drawing, target)
    except (BadScale, NoView, NoWriter) as error:
        raise click.UsageError(f"{error}.") from None
    click.echo(f"wrote {target}")


@main.command(name="list")
@click.argument("what", type=click.Choice(["materials", "codes", "questions", "climates", "starters"]))
def list_(what: str) -> None:
    """Print what the tool carries."""
    from layerfolio import listing

    for line in getattr(listing, what)():
        click.echo(line)


@main.command()
def schema() -> None:
    """Print the JSON Schema of the project file, for editor completion."""
    import json

    from layerfolio.catalogue.hatches import families
    from layerfolio.reading.json_schema import json_schema

    click.echo(json.dumps(json_schema(families()), ensure_ascii=False, indent=1))
