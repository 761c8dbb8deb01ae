import type { Option } from 'commander'
import { textOption } from './options.ts'

/** The option by which a command that writes takes a lock over. */
export const takeOverOption = (command: string): Option =>
  textOption(
    command,
    '--take-over <LOCK>',
    'take over the lock that keeps others out, as the refusal names it',
    'lock',
  )

/** What it risks; for the help of each command that has it. */
export const TAKE_OVER_HELP = `
--take-over is for a lock that nobody can give back: of another machine that died, of a container, of a file that is
damaged. The refusal names the LOCK, so that no other is taken. If whoever holds it is still at work, what they do
after this is not kept in the job, and they can only look at it from then on: ask them first.`
