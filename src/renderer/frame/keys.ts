/** Every key that does something, by where it does it. */
export const KEYS: readonly { where: string; keys: readonly (readonly [string, string])[] }[] = [
  {
    where: 'Everywhere',
    keys: [
      ['Alt+1 … Alt+4', 'go to a station'],
      ['F6, Shift+F6', 'rail, sheet, table, desk'],
      ['Ctrl+Z', 'undo'],
      ['Ctrl+Shift+Z, Ctrl+Y', 'redo'],
      ['M', 'what is drawn over the sheet: nothing, what is chosen, this view, all'],
      ['D', 'next disputed row, with Shift the one before'],
      ['V', 'next row with no value'],
      ['U', 'next unchecked row'],
      ['W', 'whole sheet'],
      ['Z', 'close to what is under the pointer, or to what is chosen, and back'],
      ['?', 'this sheet of keys'],
    ],
  },
  {
    where: 'On the sheet',
    keys: [
      ['+, −', 'closer, further off'],
      ['0 … 9, S', 'take up the tool that has the digit or letter'],
      ['Space and drag', 'move the sheet'],
      ['Wheel', 'closer and further off about the pointer'],
      ['Two fingers', 'move the sheet, and closer and further off'],
    ],
  },
  {
    where: 'While picking',
    keys: [
      ['Drag', 'both ends at once, along a line, across a circle from rim to rim, from end to end of a slot'],
      ['Arrows', 'move the last pick by 0.1 px, with Shift by 1 px'],
      ['Ctrl+arrows', 'move the cross by 20 px, with Shift by 100 px'],
      ['Enter or P', 'pick at the cross'],
      ['Double click, Enter', 'end a path'],
      ['Shift and click, Shift+P', 'take the old mark that lies there'],
      ['Alt and click, Alt+P', 'a pick by hand: exactly there, and not on the stroke'],
      ['H', 'picks by hand, or on strokes'],
      ['E', 'the centre of a stroke, one edge, the other'],
      ['X', 'points where strokes cross, or on one stroke'],
      ['I', 'strokes in the ink of the sheet, or in the other: white across a black area'],
      ['Letters, when all is picked', 'go to the form'],
      ['Enter in the form', 'keep it; with Shift, and count its name up for the next'],
      ['Esc', 'take the last pick back, then cancel'],
    ],
  },
  {
    where: 'While reading a figure',
    keys: [
      ['Arrows', 'go through what it could be'],
      ['1 … 9', 'choose the one with that number'],
      ['Enter', 'take it'],
      ['C', 'write it otherwise'],
      ['Esc', 'give it up'],
    ],
  },
  {
    where: 'In the list of figures',
    keys: [
      ['Arrows, N and P', 'next and last figure; the sheet goes along'],
      ['Enter', 'take it; of one that was taken, its card'],
      ['C', 'correct it'],
      ['X', 'dismiss it; one that was dismissed is shown again'],
    ],
  },
  {
    where: 'In the list of sheets',
    keys: [['Alt+Up, Alt+Down', 'move the sheet in the set']],
  },
  {
    where: 'In the table',
    keys: [
      ['Arrows', 'move about'],
      ['Home, End', 'first and last cell; with Ctrl first and last row'],
      ['F2, Enter', 'edit the cell'],
      ['Enter', 'keep what was written; among the readings of the original, on to the row below'],
      ['Tab, Shift+Tab', 'keep it, and on to the next cell of the row or the one before'],
      ['Insert', 'new dimension without a pick'],
      ['Esc', 'cancel'],
    ],
  },
]
