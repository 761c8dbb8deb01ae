import { existsSync } from 'node:fs'
import { expect, test } from 'vitest'
import { DEAREST } from './dearest-first.ts'

test('every file that is named as dear is there, once', () => {
  expect(DEAREST.filter((path) => !existsSync(path))).toEqual([])
  expect(new Set(DEAREST).size).toBe(DEAREST.length)
})
