"""The path column of the compliance record: words that hold for a whole topic are said once, in the head of the topic."""

from collections import Counter
from dataclasses import dataclass

from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.paths import BALANCES, BESIDE, NO_CHOICE
from layerfolio.codes.wording import sentence
from layerfolio.sheets.figures import NONE
from layerfolio.sheets.markup import plain
from layerfolio.sheets.record_summary import in_words

DECIDES = "authority having jurisdiction"
WHO = {"a licensed structural engineer and the authority having jurisdiction": "an engineer and the authority"}
AS_HEADED, BELOW = "As headed", "Named at the end"
LONG = 56  # characters that the narrow column carries without making its row taller
Numbered = tuple[tuple[int, Finding], ...]


@dataclass(frozen=True, slots=True)
class TopicWords:
    """What the head of a topic says for its lines: the performance path, and who decides with the authority."""

    path: str = ""
    alone: bool = True  # no line of the topic names another
    decides: str = ""

    @property
    def text(self) -> str:
        unless = "" if self.alone else ", where a line names no other"
        path = f"Performance path{unless}: {plain(self.path)}." if self.path else ""
        return " ".join(filter(None, (path, f"{plain(sentence(self.decides))} decide." if self.decides else "")))


def topic_words(found: Numbered) -> TopicWords:
    """The words that spare most where they are printed once, from two lines on."""
    words = [path_words(one)[0] for _, one in found if is_open(one)]
    counted = Counter(one for one in words if one)
    path, count = max(counted.items(), key=lambda one: ((one[1] - 1) * len(one[0]), one[0]), default=("", 0))
    who = {who_else(one) for _, one in found if _has_path(one)}
    decides = who.pop() if len(who) == 1 and sum(_has_path(one) for _, one in found) > 1 else ""
    return TopicWords(path, len(counted) == 1, decides) if count > 1 else TopicWords(decides=decides)


def is_open(finding: Finding) -> bool:
    """Whether the line names a performance path that could be taken in its place."""
    return (
        finding.verdict not in (Verdict.NOT_ASKED, Verdict.MEETS) and finding.path != "performance"
        and finding.performance not in ("", "none")
    )  # fmt: skip


def path_words(finding: Finding) -> tuple[str, str]:
    """Which performance path there is, and what was calculated on it."""
    words, _, calculated = finding.performance.partition("; ")
    return words, calculated


def performance_cell(number: int, findings: tuple[Finding, ...], topic: TopicWords) -> tuple[str, str]:
    """What is shown instead, beside what the head of the topic says; long words stand below the row, which is the second text."""
    finding = findings[number - 1]
    if finding.verdict is Verdict.NOT_ASKED or finding.performance in ("", "none"):
        return NONE, ""
    if finding.path == "performance":
        return _serves(finding, findings), ""
    words, calculated = path_words(finding)
    if is_open(finding) and words == topic.path:
        return plain(sentence(calculated)) or AS_HEADED, ""
    if len(finding.performance) <= LONG:
        return plain(sentence(finding.performance)), ""
    return plain(sentence(calculated)) or BELOW, f"_performance path_ {plain(words)}"


def _serves(finding: Finding, findings: tuple[Finding, ...]) -> str:
    """Of a line that is itself a calculation: the lines that it serves."""
    if finding.chosen != BESIDE:
        answers = [n for n, one in enumerate(findings, 1) if one.answered_by == finding.id]
        return f"Serves {in_words(answers)}" if answers else "This line is a performance path"
    served = [
        n for n, one in enumerate(findings, 1)
        if one.topic == finding.topic and one.assembly == finding.assembly and one.path == "prescriptive"
    ]  # fmt: skip
    if finding.id.rpartition("/")[2] in BALANCES and served:
        return f"Serves {in_words(served)}"
    return "No line of the set rests on it"


def path_cell(finding: Finding, findings: tuple[Finding, ...], topic: TopicWords) -> str:
    """The path taken; that of a met limit is the one word, and an answer names its line; why a path is open stands below the
    row. Then who decides, where it is neither the authority alone nor said in the head."""
    if not _has_path(finding):
        return ""
    line = answering_line(finding, findings)
    chosen = next((one for one in ("prescriptive", "open") if finding.chosen.startswith(one)), finding.chosen)
    lines = [f"_path_ {plain(chosen)}" + (f", line {line}" if line else "")]
    if (who := who_else(finding)) and who != topic.decides:
        lines.append(f"{plain(who)} decide")
    return "\n".join(lines)


def answering_line(finding: Finding, findings: tuple[Finding, ...]) -> int:
    """Number of the line that answers this one: of the whole building, or the other table's on the same part; else 0."""
    answers = (None, finding.assembly)
    return next((n for n, one in enumerate(findings, 1) if one.id == finding.answered_by and one.assembly in answers), 0)


def _has_path(finding: Finding) -> bool:
    return finding.verdict is not Verdict.NOT_ASKED and finding.chosen not in ("", BESIDE, NO_CHOICE)


def who_else(finding: Finding) -> str:
    """Who decides, where it is not the authority alone."""
    return "" if finding.who_decides == DECIDES else WHO.get(finding.who_decides, finding.who_decides)
