import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { parseJobText } from '../../../src/core/job/parse-job-text.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { JobError } from '../../../src/core/job/text/job-error.ts'
import { findJsonFault } from '../../../src/core/job/text/json-fault.ts'
import { writeJob } from '../../../src/core/job/write-job.ts'
import { winchJob } from './winch-job.ts'

describe('the text of a job', () => {
  it('is read as it was written, with or without a byte order mark', () => {
    const job = newJob('Bilge pump', 'mm')
    expect(parseJobText(writeJob(job))).toEqual(job)
    expect(parseJobText(`\uFEFF${writeJob(job)}`)).toEqual(job)
  })

  it.each([
    ['', 'at line 1, column 1 there should be a value, and there is the end'],
    [
      '{"a": 1,}',
      'at line 1, column 9 there should be the name of a field, in double quotes, and there is "}"',
    ],
    ['{\n  "a" 1}', 'at line 2, column 7 there should be a colon, and there is "1"'],
    ['[1\n2]', 'at line 2, column 1 there should be a comma or ], and there is "2"'],
    [
      '{"a": [1,\n2',
      'at line 2, column 2 there should be the ] that closes the [ on line 1, and there is the end',
    ],
    [
      '{"a": "x\ny"}',
      'at line 1, column 9 there should be the rest of a text in quotes, on one line, and there is "\\n"',
    ],
    [
      '{"a": "x',
      'at line 1, column 9 there should be the closing quote of the text opened on line 1, and there is the end',
    ],
    ['{"a": tru}', 'at line 1, column 7 there should be a value, and there is "t"'],
    ['{"a": 01}', 'at line 1, column 8 there should be a comma or }, and there is "1"'],
    ['{} {}', 'at line 1, column 4 there should be nothing more, and there is "{"'],
    [
      '{"a": "\\q"}',
      'at line 1, column 8 there should be an escape such as \\" or \\\\ or \\n, and there is "\\\\"',
    ],
  ])('%j is not JSON, and the refusal says where', (text, problem) => {
    expect(() => parseJobText(text)).toThrow(
      expect.objectContaining({ message: `This is not JSON: ${problem}.` }),
    )
  })

  it('is refused in words when a million brackets open in it', () => {
    expect(() => parseJobText('['.repeat(1_000_000))).toThrow(JobError)
    expect(() => parseJobText(`${'['.repeat(100_000)}${']'.repeat(100_000)}`)).toThrow(JobError)
  })
})

describe('the place where a text stops being JSON', () => {
  const isJson = (text: string): boolean => {
    try {
      JSON.parse(text)
      return true
    } catch {
      return false
    }
  }

  it('is nowhere in JSON', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        expect(findJsonFault(text)).toBeNull()
      }),
    )
  })

  it('is found in damaged JSON exactly when the engine refuses it', () => {
    const damage = fc.tuple(
      fc.json(),
      fc.nat(),
      fc.nat(3),
      fc.constantFrom('', '"', '{', '}', ']', ',', ':', '1', '\\', 'n', '\n'),
    )
    fc.assert(
      fc.property(damage, ([json, where, taken, put]) => {
        const at = where % (json.length + 1)
        const text = json.slice(0, at) + put + json.slice(at + taken)
        const fault = findJsonFault(text)
        expect(fault === null).toBe(isJson(text))
        if (fault !== null) expect(fault.at).toBeLessThanOrEqual(text.length)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('a job in its text', () => {
  const text = writeJob(winchJob())
  const verdict = (read: () => Job): unknown => {
    try {
      return read()
    } catch (error) {
      expect(error).toBeInstanceOf(JobError)
      return (error as JobError).reason
    }
  }

  it.each([
    ['as it is', text],
    ['with a nought below nothing', text.replace('"sigma": 0.2', '"later": -0, "sigma": 0.2')],
    ['with a number that is none', text.replace('"sigma": 0.2', '"sigma": 1e999')],
    [
      'with a field that no object may have',
      text.replace('"sigma": 0.2', '"later": { "__proto__": 1 }, "sigma": 0.2'),
    ],
    [
      'with a list too deep',
      text.replace('"sigma": 0.2', `"later": ${'['.repeat(99)}${']'.repeat(99)}, "sigma": 0.2`),
    ],
    ['with what does not fit', text.replace('"sigma": 0.2', '"sigma": -0.2')],
  ])('comes to the same as its JSON value: %s', (what, changed) => {
    expect(changed === text).toBe(what === 'as it is')
    const read = verdict(() => parseJobText(changed))
    expect(read).toEqual(verdict(() => readJob(JSON.parse(changed))))
  })
})
