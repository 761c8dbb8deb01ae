import './title-block-section.css'
import type { Edit } from '../../../core/job/edits/edit.ts'
import type { Sheet } from '../../../core/job/model/types.ts'
import type { TitleField } from '../../../core/reading/labels/title-field.ts'
import type { TitleLabel } from '../../../core/reading/labels/title-labels.ts'
import { useBench } from '../../bench/bench-store.ts'
import { makeThen } from '../../bench/edits.ts'
import { readTitleBlock } from '../../bench/title-blocks.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { chanceWords } from '../../reading/chance-words.ts'
import { ScanCrop } from '../../tiles/scan-crop.tsx'

/** The crop of a proposal, CSS pixels. */
const CROP = { width: 314, height: 44 }

/** What the fields of a title block are called, as in the record beneath. */
const FIELDS: Readonly<Record<TitleField, string>> = {
  title: 'Title',
  scale: 'Scale',
  number: 'Drawing number',
  date: 'Date',
  material: 'Material',
  'drawn-by': 'Drawn by',
}

/** Where in the record it goes; what has no field there becomes a line of the description. */
const IN_RECORD = { number: 'identifier', date: 'date', 'drawn-by': 'creator' } as const

/** The line of a description that says a field. */
const lineOf = ({ field, text }: TitleLabel): string => `${FIELDS[field]}: ${text}`

/** What the sheet says in that place now; empty where nothing. */
function saysNow(sheet: Sheet, label: TitleLabel): string {
  switch (label.field) {
    case 'title':
      return sheet.title
    case 'number':
    case 'date':
    case 'drawn-by':
      return sheet.record[IN_RECORD[label.field]] ?? ''
    default: {
      const lines = (sheet.record.description ?? '').split('\n')
      return lines.includes(lineOf(label)) ? label.text : ''
    }
  }
}

/** The sheet with a proposal in its place; what else it says stays. */
function taken(sheet: Sheet, label: TitleLabel): Edit {
  const { id, record } = sheet
  const { field, text } = label
  if (field === 'title') return { do: 'change-sheet', id, set: { title: text } }
  if (field === 'scale' || field === 'material') {
    const before = record.description ?? ''
    const description = before === '' ? lineOf(label) : `${before}\n${lineOf(label)}`
    return { do: 'change-sheet', id, set: { record: { ...record, description } } }
  }
  return { do: 'change-sheet', id, set: { record: { ...record, [IN_RECORD[field]]: text } } }
}

/** What the title block says, to be taken field by field; nothing is filled in by itself. */
export function TitleBlockSection({ sheet }: { sheet: Sheet }) {
  const block = useBench((bench) => bench.titleBlocks[sheet.id])
  const writable = useBench((bench) => bench.opened?.writable === true)
  const read = () => void readTitleBlock(sheet.id)
  if (!writable && block === undefined) return null
  return (
    <Section title="Title block">
      {block === undefined && (
        <>
          <p className="block-soft">
            The title block is looked for near a corner of the sheet and read. What it says is proposed here,
            to be taken field by field.
          </p>
          <div className="block-row">
            <Button onPress={read}>Read the title block</Button>
          </div>
        </>
      )}
      {block?.is === 'being read' && (
        <p className="block-soft" role="status">
          Reading the title block…
        </p>
      )}
      {block?.is === 'not read' && (
        <>
          <p className="title-block-not" role="alert">
            {block.sentence}
          </p>
          <div className="block-row">
            <Button onPress={read}>Read it again</Button>
          </div>
        </>
      )}
      {block?.is === 'read' && block.labels.length === 0 && (
        <p className="block-soft" role="status">
          Nothing was read that is known of title blocks. Write the record yourself, below.
        </p>
      )}
      {block?.is === 'read' && block.labels.length > 0 && (
        <ul className="title-block" aria-label="What the title block says">
          {block.labels.map((label) => (
            <li key={JSON.stringify([label.field, label.box])}>
              <Proposal sheet={sheet} label={label} writable={writable} />
            </li>
          ))}
        </ul>
      )}
    </Section>
  )
}

function Proposal({ sheet, label, writable }: { sheet: Sheet; label: TitleLabel; writable: boolean }) {
  const { field, text, probability, box } = label
  const now = saysNow(sheet, label)
  const called = FIELDS[field]
  const take = () =>
    makeThen(({ sheets }) => ({ edit: taken(sheets.find(({ id }) => id === sheet.id) ?? sheet, label) }))
  return (
    <>
      <ScanCrop
        sheet={sheet.id}
        box={withRoom(box)}
        {...CROP}
        label={`${called}, as it stands on the sheet`}
      />
      <p className="title-block-one">
        <span>
          <span className="title-block-field">{called}</span> {text}{' '}
          <span className="block-soft">{chanceWords(probability)}</span>
        </span>
        {now === text ? (
          <span className="block-soft">taken</span>
        ) : (
          writable && (
            <Button kind="quiet" label={`Take: ${called} ${text}`} onPress={() => void take()}>
              Take
            </Button>
          )
        )}
      </p>
      {now !== '' && now !== text && <p className="block-soft">In place of “{now}”.</p>}
    </>
  )
}

const withRoom = ([x, y, width, height]: TitleLabel['box']): [number, number, number, number] => {
  const room = height * 0.3
  return [x - room, y - room, width + 2 * room, height + 2 * room]
}
