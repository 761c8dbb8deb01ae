import { expect, test } from 'vitest'
import { oneSentence } from '../../../../src/main/cli/output/one-sentence.ts'

test.each([
  [['no job.json in it'], 'No job.json in it.'],
  [['it is open for writing by A. Rivet.'], 'It is open for writing by A. Rivet.'],
  [['Is that a scan?'], 'Is that a scan?'],
  [['"ju" is not a job folder: it holds no job.json.'], '"ju" is not a job folder: it holds no job.json.'],
  [['ju/job.json is empty.'], 'ju/job.json is empty.'],
  [['drum_od is open'], 'drum_od is open.'],
  [['The view has no scale.', 'V1 needs a reference.'], 'The view has no scale; V1 needs a reference.'],
  [['The view has no scale.', 'Drum_od needs one.'], 'The view has no scale; Drum_od needs one.'],
  [['The file is gone.', 'Scan.png was there.'], 'The file is gone; Scan.png was there.'],
  [['It is open.', '"Elevation" has no scale.'], 'It is open; "Elevation" has no scale.'],
  [['There is no gauge “99”.', 'Check the number.'], 'There is no gauge “99”; check the number.'],
  [['No unit.', 'A mark, perhaps?'], 'No unit; a mark, perhaps?'],
  [['The scan a\n\u001b[31mb.png is\u202egone.'], 'The scan a [31mb.png is gone.'],
])('%j is one sentence', (sentences, sentence) => {
  expect(oneSentence(sentences)).toBe(sentence)
})
