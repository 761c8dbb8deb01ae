import { isPerCent } from '../../../core/job/model/per-cent.ts'
import type { Sheet } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeEdit, makeThen } from '../../bench/edits.ts'
import { enteredBy } from '../../bench/signature.ts'
import { HistorySection } from '../../history/history-section.tsx'
import { SavedField } from '../../parts/saved-field.tsx'
import { Section } from '../../parts/section.tsx'
import { orientationInWords } from '../../words/orientation-words.ts'
import { reason } from '../../words/window-words.ts'
import { lengthProblem } from '../keeping/written-problem.ts'

/** Dublin Core terms, in the words of a drawing office. */
const TERMS = [
  { key: 'identifier', label: 'Drawing number', note: 'As the archive or the title block has it.' },
  { key: 'creator', label: 'Drawn by', note: 'The person, office or works.' },
  { key: 'date', label: 'Date', note: 'Best as 1911-03-14, or 1911.' },
] as const

type RecordKey = keyof Sheet['record']

/** What a sheet is, and what is known of its scan; each field is kept when one leaves it. */
export function RecordSection({ sheet }: { sheet: Sheet }) {
  const job = useBench((bench) => bench.opened?.job)
  const writable = useBench((bench) => bench.opened?.writable === true)
  if (job === undefined) return null
  const { id, record, scan } = sheet
  const asked = orientationInWords(scan.orientation)
  const entered = enteredBy(job, sheet)
  /** Changes the sheet as it is once all before is kept: what other fields say of it stays. */
  const change = (set: (now: Sheet) => Partial<Pick<Sheet, 'record' | 'scan'>>) =>
    makeThen(({ sheets }) => {
      const now = sheets.find((one) => one.id === id) ?? sheet
      return { edit: { do: 'change-sheet', id, set: set(now) } }
    })
  /** Keeps what is stated for the sheet; nothing is not stated. */
  const keep = (stated: 'draughting' | 'paper') => (text: string) =>
    makeEdit(
      text === ''
        ? { do: 'change-sheet', id, clear: [stated] }
        : { do: 'change-sheet', id, set: { [stated]: text } },
    )
  const note = (key: RecordKey) => (value: string) =>
    change(({ record: { [key]: _old, ...others } }) => ({
      record: value === '' ? others : { ...others, [key]: value },
    }))
  const field = (key: RecordKey, label: string, rest: { note?: string; lines?: number }) => (
    <SavedField
      key={key}
      label={label}
      value={record[key] ?? ''}
      onSave={note(key)}
      disabled={!writable}
      {...rest}
    />
  )
  return (
    <>
      <Section title="Record">
        <SavedField
          label="Title"
          value={sheet.title}
          disabled={!writable}
          check={(title) => (title.trim() === '' ? reason('written.no-sheet-title') : null)}
          onSave={(title) => makeEdit({ do: 'change-sheet', id, set: { title } })}
        />
        {TERMS.map(({ key, label, note }) => field(key, label, { note }))}
        {field('source', 'Where it is kept', { lines: 2 })}
        {field('rights', 'Rights', { lines: 2 })}
        {field('description', 'Description', { lines: 3 })}
      </Section>
      <Section title="Scan">
        <dl className="block-facts">
          <dt>File</dt>
          <dd>{scan.file}</dd>
          <dt>Page</dt>
          <dd>{scan.page}</dd>
          <dt>Size</dt>
          <dd>
            {scan.width} × {scan.height} px{paperSize(scan, job.unit)}
          </dd>
          {scan.drawnAt !== undefined && (
            <>
              <dt>Drawn at</dt>
              <dd>{scan.drawnAt} dpi: the page is lines and lettering, and got its pixels here</dd>
            </>
          )}
          {entered !== null && (
            <>
              <dt>Brought in by</dt>
              <dd>{entered}</dd>
            </>
          )}
          {asked !== null && (
            <>
              <dt>Asks to be</dt>
              <dd>{asked}. Picks are in its pixels as they are stored</dd>
            </>
          )}
        </dl>
        <SavedField
          label="Resolution"
          suffix="dpi"
          inputMode="decimal"
          value={scan.dpi === undefined ? '' : String(scan.dpi)}
          disabled={!writable}
          note="As the scanner had it. Lengths come from sizes known on the sheet, never from this."
          check={(text) =>
            text.trim() === '' || (Number(text) > 0 && Number.isFinite(Number(text)))
              ? null
              : reason('written.no-dpi', { example: 300 })
          }
          onSave={(text) =>
            change(({ scan: { dpi: _old, ...others } }) => ({
              scan: text === '' ? others : { ...others, dpi: Number(text) },
            }))
          }
        />
        <SavedField
          label="Draughting uncertainty"
          value={sheet.draughting ?? ''}
          placeholder="0.13 mm"
          disabled={!writable}
          note="How far a drawn line lies from where it was meant, on paper, one standard deviation. 0.13 mm (0.005 in) is usual for careful work with a pen; a rough sketch needs more."
          check={(text) => lengthProblem(job, text)}
          onSave={keep('draughting')}
        />
        <SavedField
          label="Stretch of the paper"
          value={sheet.paper ?? ''}
          placeholder="0.5 %"
          disabled={!writable}
          note="How much more the paper may have shrunk or swelled one way than the other, one standard deviation. It counts where no figured size tells: 0.5 % is usual, 0 % is right for film or metal."
          check={(text) => (text.trim() === '' || isPerCent(text) ? null : reason('written.no-per-cent'))}
          onSave={keep('paper')}
        />
      </Section>
      <HistorySection of={{ kind: 'sheet', id }} />
    </>
  )
}

/** The size of the paper by the scan's dpi. */
function paperSize({ width, height, dpi }: Sheet['scan'], unit: 'in' | 'mm'): string {
  if (dpi === undefined) return ''
  const size = (pixels: number): string =>
    unit === 'in' ? `${(pixels / dpi).toFixed(1)}` : `${Math.round((25.4 * pixels) / dpi)}`
  return ` (${size(width)} × ${size(height)} ${unit} by its dpi)`
}
