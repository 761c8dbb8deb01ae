import type { Refused } from '../../contract/reply.ts'

/** What a window says when nothing answers it any more. */
export const GONE =
  'The workbench no longer answers. Everything that was shown as saved is in the job folder; ' +
  'open the workbench again to go on.'

const refused = (code: string, sentence: string): Refused => ({
  ok: false,
  reason: { code, parts: {} },
  sentence,
})

export const gone = refused('host.gone', GONE)

export const notUnderstood = refused(
  'host.not-understood',
  'What the workbench answered could not be understood. Everything that was shown as saved is in the job folder; ' +
    'reload the window to see how things stand.',
)

export const tooLarge = refused(
  'host.too-large',
  'This is more than the workbench takes at once, so nothing was done: do it in smaller parts.',
)
