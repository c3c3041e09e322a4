"""python -m layerfolio."""

from layerfolio.cli import main

main()
