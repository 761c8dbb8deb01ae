import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fileNameOf, safeName } from '../../../src/main/services/files/safe-name.ts'

describe('a name for a folder', () => {
  test.each([
    ['Deck ventilator', 'Deck ventilator'],
    ['Boiler: front/rear', 'Boiler- front-rear'],
    ['../../etc/passwd', 'etc-passwd'],
    ['..', 'Job'],
    ['  .hidden', 'hidden'],
    ['Plan. ', 'Plan'],
    ['a\u0000b\nc', 'a-b-c'],
    ['NUL', 'Job NUL'],
    ['com1.tif', 'Job com1.tif'],
    ['Commode', 'Commode'],
    ['Lüfter – Ø 7 ½', 'Lüfter – Ø 7 ½'],
    ['', 'Job'],
  ])('%j becomes %j', (title, name) => {
    expect(safeName(title, 'Job')).toBe(name)
  })

  // The names that Windows refuses: "Naming Files, Paths, and Namespaces", Microsoft; from memory.
  test('is one that every system takes, whatever the title', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (title) => {
        const name = safeName(title, 'Job')
        expect(name).not.toMatch(/[\p{Cc}\p{Cs}\\/:*?"<>|]/u)
        expect(name).not.toMatch(/^\.|[. ]$|^$/)
        expect(name).not.toMatch(/^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i)
        expect(Buffer.byteLength(name)).toBeLessThanOrEqual(200)
      }),
    )
  })
})

describe('the name of a file that was handed over', () => {
  test.each([
    ['/home/rivet/plan.tif', 'plan.tif'],
    ['C:\\scans\\plan.tif', 'plan.tif'],
    ['..\\..\\plan.tif', 'plan.tif'],
    ['../', 'scan'],
    ['plan\u0000.png', 'plan-.png'],
    [`${'x'.repeat(500)}.png`, `${'x'.repeat(176)}.png`],
  ])('%j is %j', (given, name) => {
    expect(fileNameOf(given, 'scan')).toBe(name)
  })
})
