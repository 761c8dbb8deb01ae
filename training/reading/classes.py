"""The glyphs that the network tells apart. One class covers a letter in both cases."""

CLASSES = list("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ") + list(".,'\"/_-Ø°±+()×#&:=@")
INDEX = {glyph: i for i, glyph in enumerate(CLASSES)}


def class_of(character):
    """The class of a character as written; None for one that has none."""
    alike = {"ø": "Ø", "–": "-", "—": "-", "−": "-", "’": "'", "‘": "'", "′": "'", "″": '"', "”": '"', "“": '"'}
    return INDEX.get(alike.get(character, character.upper()))
