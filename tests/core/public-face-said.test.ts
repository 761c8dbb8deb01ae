import { readFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'

const FACE = fileURLToPath(new URL('../../src/core/index.ts', import.meta.url))

const PASSED_ON = /^export (?:type )?(\*|\{[^}]*\}) from '([^']+)'/gm
const DECLARED =
  /^(\/\*\*(?:[^*]|\*(?!\/))*\*\/\n)?export (?:async )?(?:function|const|class|interface|type) (\w+|\{[^}]*\}(?= =))/gm

interface Declaration {
  name: string
  file: string
  said: string
}

const namesIn = (braces: string): string[] =>
  braces
    .slice(1, -1)
    .split(',')
    .map((name) => name.replace(/\btype /, '').trim())
    .filter((name) => name !== '')

/** What a file exports under a name or, without one, all that it exports, each where it is declared. */
function declarations(file: string, wanted?: string): Declaration[] {
  const text = readFileSync(file, 'utf8')
  const own = [...text.matchAll(DECLARED)].flatMap(([, said = '', names = '']) =>
    (names.startsWith('{') ? namesIn(names) : [names]).map((name) => ({ name, file, said })),
  )
  const passedOn = [...text.matchAll(PASSED_ON)].flatMap(([, names = '', from = '']) => {
    const there = resolve(dirname(file), from)
    if (names === '*') return declarations(there, wanted)
    return namesIn(names)
      .map((name) => name.split(' as ')[0] ?? name)
      .filter((name) => wanted === undefined || name === wanted)
      .flatMap((name) => {
        const found = declarations(there, name)
        return found.length > 0 ? found : [{ name, file: there, said: '' }]
      })
  })
  return [...own, ...passedOn].filter(({ name }) => wanted === undefined || name === wanted)
}

it('everything that the public face exports says what it is where it is declared', () => {
  const all = declarations(FACE)
  expect(all.length).toBeGreaterThan(120)
  expect(all.filter(({ said }) => said === '').map(({ name, file }) => `${name} in ${file}`)).toEqual([])
})
