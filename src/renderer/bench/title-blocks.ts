import { useBench } from './bench-store.ts'
import { theHost } from './the-host.ts'
import type { TitleBlock } from './title-block.ts'

/** Has the title block of a sheet read. What it says is proposed, and taken by nobody but a person. */
export async function readTitleBlock(sheet: string): Promise<void> {
  const opened = useBench.getState().opened?.id
  set(sheet, { is: 'being read' })
  const reply = await theHost().ask('read-labels', {
    sheet,
    ...(opened === undefined ? {} : { job: opened }),
  })
  if (useBench.getState().opened?.id !== opened) return
  set(sheet, reply.ok ? { is: 'read', labels: reply.answer } : { is: 'not read', sentence: reply.sentence })
}

const set = (sheet: string, block: TitleBlock): void =>
  useBench.setState(({ titleBlocks }) => ({ titleBlocks: { ...titleBlocks, [sheet]: block } }))
