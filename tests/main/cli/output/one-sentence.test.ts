import { expect, test } from 'vitest'
import { oneClause, oneSentence } from '../../../../src/main/cli/output/one-sentence.ts'

test.each([
  ["error: unknown command 'tabel'\n(Did you mean table?)", "Unknown command 'tabel' (Did you mean table?)."],
  ["value 'x' is invalid. Allowed choices are in, mm.", "Value 'x' is invalid; allowed choices are in, mm."],
  ['it is open for writing by A. Rivet.', 'It is open for writing by A. Rivet.'],
  ['no job.json in it', 'No job.json in it.'],
  ['the view has no scale. V1 needs a reference.', 'The view has no scale; V1 needs a reference.'],
  ['is that a scan?', 'Is that a scan?'],
  ['"ju" is not a job folder: it holds no job.json.', '"ju" is not a job folder: it holds no job.json.'],
  ['ju/job.json is empty.', 'ju/job.json is empty.'],
  ['drum_od is open', 'drum_od is open.'],
  ['the view has no scale. Drum_od needs one', 'The view has no scale; Drum_od needs one.'],
  ['the file is gone. Scan.png was there.', 'The file is gone; Scan.png was there.'],
  ['it is open. "Elevation" has no scale.', 'It is open; "Elevation" has no scale.'],
])('%j becomes one sentence', (message, sentence) => {
  expect(oneSentence(message)).toBe(sentence)
})

test('a clause ends without a full stop, ready for a longer sentence', () => {
  expect(oneClause('Missing argument. Give a folder.')).toBe('Missing argument; give a folder')
})
