import { randomBytes } from 'node:crypto'

/** Enough that no two sittings in any copies of a job are ever the same. */
const BYTES = 12

/** The sittings of one opening of a job: one for each person who picks in it, by the person's id. */
export function sittings(): (person: string) => string {
  const known = new Map<string, string>()
  return (person) => {
    const sitting = known.get(person) ?? randomBytes(BYTES).toString('base64url')
    known.set(person, sitting)
    return sitting
  }
}
