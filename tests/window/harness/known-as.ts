import { join } from 'node:path'
import { KeptPerson } from '../../../src/main/services/people/kept-person.ts'

/** Has the program know somebody before it is begun, unless it knows one already. */
export async function knownAs(home: string, name: string): Promise<void> {
  const kept = new KeptPerson(join(home, 'settings'))
  if ((await kept.name()) === '') await kept.keep(name)
}
