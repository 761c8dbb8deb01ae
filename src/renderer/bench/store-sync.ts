import type { BenchState, Committed } from '../../contract/bench-state.ts'
import type { HostEvent } from '../../contract/host-event.ts'
import { scanVersion } from '../../contract/picture-addresses.ts'
import { applyEdit, type Edit, personOf } from '../../core/job/edits/edit.ts'
import type { Job, Unit } from '../../core/job/model/types.ts'
import type { FiguresAs } from '../../core/ledger/units/look.ts'
import { Computer } from '../findings/computer.ts'
import { noPicks } from '../picking/picks.ts'
import { inWords } from '../words/window-words.ts'
import { type BenchContents, useBench } from './bench-store.ts'
import { heardCommand } from './commands.ts'
import { getPictures, heardOfPictures } from './get-pictures.ts'
import { endWork, showWork, tell, tellWritable } from './notices.ts'
import { heardOfReadings } from './readings.ts'
import { renamed } from './renamed.ts'
import { isSaidAbove } from './said-above.ts'
import { personName } from './signature.ts'
import { ask } from './the-host.ts'

let computer: Computer | undefined

/** What computes; made when it is first needed. */
export function theComputer(): Computer {
  computer ??= new Computer(
    (n, table) => useBench.setState({ table, tableOf: n }),
    (because) => tell('failed', inWords(because)),
  )
  return computer
}

/** Has the table of the job that is open worked out, in the unit that it is looked at in. */
function workOutTable(): void {
  const { opened, unit, figuresAs } = useBench.getState()
  if (opened !== null) theComputer().table(opened.n, opened.job, { unit: unit ?? opened.job.unit, figuresAs })
}

/** Looks at lengths in another unit; null: in the job's own. */
export function lookIn(unit: Unit | null): void {
  if (useBench.getState().unit === unit) return
  useBench.setState({ unit })
  workOutTable()
}

/** Has exact inches set in fractions or in decimals. */
export function setFigures(figuresAs: FiguresAs): void {
  if (useBench.getState().figuresAs === figuresAs) return
  useBench.setState({ figuresAs })
  workOutTable()
}

/** Takes in how things stand: another job, or the same one with edits that were missed. */
export function takeBench(state: BenchState): void {
  const { opened, ...host } = state
  const before = useBench.getState()
  const same = before.opened?.id === opened?.id
  // An answer that was overtaken by the news of an edit would set the window back.
  const overtaken = opened?.reading === before.opened?.reading && (opened?.n ?? 0) < (before.opened?.n ?? 0)
  if (same && overtaken) return
  if (!same) computer?.forget()
  useBench.setState({
    host,
    opened,
    connected: true,
    person: atWork(before, state),
    ...(same
      ? {}
      : {
          table: null,
          tableOf: -1,
          pictures: {},
          readings: {},
          titleBlocks: {},
          figure: null,
          aids: {},
          selection: null,
          unit: null,
          notices: [],
          work: [],
          sheet: opened?.job.sheets[0]?.id ?? null,
          station: 'sheet' as const,
          picks: noPicks({ kind: 'look' }),
        }),
  })
  if (same && opened !== null && before.opened !== null) anewWhereScansChanged(before.opened.job, opened.job)
  if (opened === null) return
  dropWhatIsGone(opened.job)
  if (same && before.opened?.writable === false && opened.writable) tellWritable()
  const told = same ? (before.opened?.notices ?? []) : []
  for (const notice of opened.notices) {
    if (!told.includes(notice) && !isSaidAbove(opened, notice)) tell('caution', notice)
  }
  workOutTable()
}

/** Who is at work: whoever the host has by now, as the job that is open lists them. */
function atWork({ host, person, opened }: BenchContents, state: BenchState): string {
  const news = host?.person !== state.person
  const name =
    news || person === '' || opened === null ? state.person || person : personName(opened.job, person)
  return state.opened === null ? name : (personOf(state.opened.job, name)?.id ?? name)
}

/** Takes in edits that are on disk; where some in between are missing, everything is asked for again. */
export function takeCommitted(committed: Committed): void {
  const { opened } = useBench.getState()
  if (opened === null) return
  const fresh = committed.edits.filter(({ n }) => n > opened.n)
  if (fresh.length === 0) return
  if (fresh[0]?.n !== opened.n + 1) {
    void lookAgain()
    return
  }
  const n = fresh.at(-1)?.n ?? opened.n
  let job: Job = opened.job
  for (const { edit, n } of fresh) job = { ...applyEdit(job, edit).job, edition: n }
  const { undoName: _undo, redoName: _redo, undoBy: _undoBy, redoBy: _redoBy, ...rest } = opened
  useBench.setState({
    opened: {
      ...rest,
      job,
      n,
      savedAt: committed.savedAt,
      scans: committed.scans,
      ...(committed.undoName === undefined ? {} : { undoName: committed.undoName }),
      ...(committed.redoName === undefined ? {} : { redoName: committed.redoName }),
      ...(committed.undoBy === undefined ? {} : { undoBy: committed.undoBy }),
      ...(committed.redoBy === undefined ? {} : { redoBy: committed.redoBy }),
    },
  })
  anewWhereScansChanged(opened.job, job)
  followNames(fresh.map(({ edit }) => edit))
  dropWhatIsGone(job)
  workOutTable()
}

/** Pictures of a scan that a sheet no longer has are put away; those of the new one are made for the sheet on the bench. */
function anewWhereScansChanged(before: Job, after: Job): void {
  const scans = new Map(before.sheets.map(({ id, scan }) => [id, scanVersion(scan)]))
  const changed = after.sheets.filter(({ id, scan }) => scans.has(id) && scans.get(id) !== scanVersion(scan))
  if (changed.length === 0) return
  const gone = new Set(changed.map(({ id }) => id))
  const { pictures, readings, titleBlocks, sheet } = useBench.getState()
  const stay = <T>(all: Record<string, T>): Record<string, T> =>
    Object.fromEntries(Object.entries(all).filter(([id]) => !gone.has(id)))
  useBench.setState({ pictures: stay(pictures), readings: stay(readings), titleBlocks: stay(titleBlocks) })
  if (sheet !== null && gone.has(sheet)) void getPictures(sheet)
}

async function lookAgain(): Promise<void> {
  const state = await ask('look', {})
  if (state !== undefined) takeBench(state)
}

/** A dimension that is chosen stays so under another name. */
function followNames(edits: readonly Edit[]): void {
  const { selection } = useBench.getState()
  if (selection?.kind !== 'dimension') return
  const name = edits.reduce(renamed, selection.name)
  if (name !== selection.name) useBench.setState({ selection: { kind: 'dimension', name } })
}

/** What an undo took away, or another window, can't stay chosen. */
function dropWhatIsGone(job: Job): void {
  const { selection, sheet, picks } = useBench.getState()
  const { tool } = picks
  if (!job.sheets.some(({ id }) => id === sheet)) {
    useBench.setState({ sheet: job.sheets[0]?.id ?? null, picks: noPicks({ kind: 'look' }) })
  }
  if ('view' in tool && !job.views.some(({ id }) => id === tool.view)) {
    useBench.setState({ picks: noPicks({ kind: 'look' }) })
  }
  if (selection === null) return
  const there =
    selection.kind === 'dimension'
      ? job.dimensions.some(({ name }) => name === selection.name)
      : selection.kind === 'view'
        ? job.views.some(({ id }) => id === selection.id)
        : selection.kind === 'mark'
          ? job.marks.some(({ id }) => id === selection.id)
          : selection.kind === 'note'
            ? job.notes.some(({ id }) => id === selection.id)
            : selection.kind === 'found figure'
              ? job.sheets.some(({ id }) => id === selection.sheet)
              : job.views.some(
                  ({ id, references }) =>
                    id === selection.view && references.some((r) => r.id === selection.id),
                )
  if (!there) useBench.setState({ selection: null })
}

/** Takes in what the host tells by itself. */
export function takeEvent(event: HostEvent): void {
  switch (event.kind) {
    case 'bench':
      takeBench(event.state)
      return
    case 'committed':
      takeCommitted(event.committed)
      return
    case 'command':
      heardCommand(event.command)
      return
    case 'readings':
      heardOfReadings(event.job, event.news)
      return
    case 'pictures': {
      const { progress } = event
      heardOfPictures(progress)
      const id = `pictures ${progress.sheet}`
      if (progress.state === 'overview' || progress.state === 'tiles') {
        const cancel = () => void ask('stop-pictures', { sheet: progress.sheet })
        showWork({ id, name: progress.sentence, done: progress.done, cancel })
      } else {
        endWork(id)
        if (progress.state === 'failed') tell('failed', progress.sentence)
      }
    }
  }
}
