import type { OpenedJob } from '../../contract/bench-state.ts'

/** Without what only ends or begins it as a sentence. */
const bare = (sentence: string): string => sentence.trim().replace(/\.$/, '').toLowerCase()

/** Whether what stands above the bench of a job says a sentence already: once is enough. */
export function isSaidAbove(opened: OpenedJob | null, sentence: string): boolean {
  const above = [opened?.readOnlyBecause, opened?.wentOn]
  return bare(sentence) !== '' && above.some((one) => one !== undefined && bare(one).includes(bare(sentence)))
}
