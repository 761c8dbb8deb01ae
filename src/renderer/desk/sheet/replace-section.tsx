import './replace-section.css'
import { useEffect } from 'react'
import type { Job, Sheet, Unit } from '../../../core/job/model/types.ts'
import { carryOver } from '../../../core/job/sheets/carry-over.ts'
import { whatIsOn } from '../../../core/job/sheets/on-sheet.ts'
import { FEWEST_COMMON, fitPictures, type PictureMapping } from '../../../core/job/sheets/picture-mapping.ts'
import type { PictureMappingKind } from '../../../core/job/sheets/picture-models.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { useBench } from '../../bench/bench-store.ts'
import { showSheet } from '../../bench/choose.ts'
import { makeThen } from '../../bench/edits.ts'
import { bringIn } from '../../intake/bring-in.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Picker } from '../../parts/picker.tsx'
import { ScanFiles } from '../../parts/scan-files.tsx'
import { Section } from '../../parts/section.tsx'
import { isComplete, isLooking } from '../../picking/picks.ts'
import { attempted } from '../../words/refusal.ts'
import { inWords } from '../../words/window-words.ts'
import {
  endReplacing,
  isWithoutBetter,
  leaveOut,
  mapBy,
  pickNext,
  type Replacing,
  replaceBy,
  tookPlace,
} from './replacing.ts'

const KINDS: readonly { id: PictureMappingKind; label: string }[] = [
  { id: 'uniform', label: 'Same both ways' },
  { id: 'affine', label: 'Out of square' },
  { id: 'projective', label: 'Photograph' },
]

const NOTES: Readonly<Record<PictureMappingKind, string>> = {
  uniform: 'Turned, and larger or smaller the same both ways. Takes three places.',
  affine:
    'Also stretched more one way than the other, or out of square. Takes three places; four or more check it.',
  projective: 'Taken from aslant by a camera. Takes four places; five or more check it.',
}

/** Gives a sheet a better picture: by places that are picked on both, all that is on it is carried over. */
export function ReplaceSection({ job, replacing }: { job: Job; replacing: Replacing }) {
  const { from, to, points, kind, half } = replacing
  const sheet = job.sheets.find(({ id }) => id === from)
  const better = job.sheets.find(({ id }) => id === to)
  usePlaces()
  useEffect(() => {
    if (sheet === undefined) endReplacing()
  }, [sheet])
  const tool = useBench(({ picks }) => picks.tool.kind)
  if (sheet === undefined) return null
  return (
    <Section title={`A better scan of ${sheet.title}`}>
      {better === undefined ? (
        <ChooseBetter job={job} from={from} />
      ) : (
        <>
          <p>
            Pick the same places on both pictures, well apart: corners of the border, crossings of lines.
            Three at least; more of them check one another.
          </p>
          <p role="status">
            {half === null
              ? `${points.length} of ${Math.max(FEWEST_COMMON[kind], points.length)} places are picked on both.`
              : `Now pick the same place on ${half.sheet === from ? better.title : sheet.title}.`}
          </p>
          {tool !== 'common' && (
            <div className="block-row">
              <Button onPress={pickNext}>Go on picking</Button>
            </div>
          )}
          <Choice
            label="How the two pictures differ"
            value={kind}
            options={KINDS}
            onChange={mapBy}
            note={NOTES[kind]}
          />
          <Outcome job={job} sheet={sheet} better={better} replacing={replacing} />
        </>
      )}
      <div className="block-row">
        <Button kind="quiet" onPress={endReplacing}>
          Cancel
        </Button>
      </div>
    </Section>
  )
}

/** Takes each place in as soon as it is picked, once its stroke has been looked for. */
function usePlaces(): void {
  const picks = useBench((bench) => bench.picks)
  const sheet = useBench((bench) => bench.sheet)
  useEffect(() => {
    if (picks.tool.kind !== 'common' || !isComplete(picks) || isLooking(picks) || sheet === null) return
    const [feature] = picks.features
    if (feature === undefined || 'mark' in feature) return
    const [at] = feature.pixels
    if (at !== undefined) tookPlace({ sheet, at, sigma: Math.max(...feature.sigmas) })
  }, [picks, sheet])
}

/** The sheets that have nothing on them may have the better picture; another one can be brought in. */
function ChooseBetter({ job, from }: { job: Job; from: string }) {
  const bare = job.sheets.filter(({ id }) => id !== from && isBare(job, id))
  return (
    <>
      <p>
        Bring the better scan in as a sheet of its own first, or choose one that nothing is on yet. What is
        picked here is then carried over to it.
      </p>
      {bare.length > 0 && (
        <Picker
          label="The better scan"
          value={null}
          placeholder="Choose a sheet"
          options={bare.map(({ id, title }) => ({ id, label: title }))}
          onChange={replaceBy}
        />
      )}
      <div className="block-row">
        <ScanFiles words="Bring in a scan…" onFiles={(files) => void bringInBetter(files, from)} />
      </div>
    </>
  )
}

/** A scan that was brought in to be the better one is chosen; of several, somebody has to say which. */
async function bringInBetter(files: readonly File[], from: string): Promise<void> {
  const [only, another] = await bringIn(files)
  if (only !== undefined && another === undefined && isWithoutBetter(from)) replaceBy(only)
}

function isBare(job: Job, id: string): boolean {
  const { views, marks, notes, evidence } = whatIsOn(job, id)
  return [views, marks, notes, evidence].every(({ length }) => length === 0)
}

interface OutcomeProps {
  job: Job
  sheet: Sheet
  better: Sheet
  replacing: Replacing
}

/** How well the places agree, and what comes of carrying over. */
function Outcome({ job, sheet, better, replacing: { points, kind } }: OutcomeProps) {
  const writable = useBench((bench) => bench.opened?.writable === true)
  const came: { done: PictureMapping } | { refused: AnyReason } = attempted(() => fitPictures(points, kind))
  const keep = async (mapping: PictureMapping) => {
    const carried = await makeThen((now) => {
      const edit = attempted(() => carryOver(now, sheet.id, better.id, mapping))
      return 'done' in edit ? { edit: edit.done } : edit
    })
    if (!carried) return
    endReplacing()
    void showSheet(sheet.id)
  }
  return (
    <>
      {points.length > 0 && (
        <ul className="replace-points" aria-label="Places on both pictures">
          {points.map((point, k) => (
            <li key={`${point.before} ${point.after}`}>
              <span>
                Place {k + 1}
                {'done' in came ? `: ${off(came.done.residuals[k], better.scan.dpi, job.unit)}` : ''}
              </span>
              <Button
                kind="quiet"
                icon="close"
                label={`Leave place ${k + 1} out`}
                onPress={() => leaveOut(k)}
              />
            </li>
          ))}
        </ul>
      )}
      {'refused' in came ? (
        points.length > 0 && <p className="block-soft">{inWords(came.refused)}</p>
      ) : (
        <>
          <p>{agreementInWords(came.done, better.scan.dpi, job.unit)}</p>
          <p className="block-soft">{goesAlong(job, sheet.id)}</p>
          <div className="block-row">
            <Button kind="main" disabled={!writable} onPress={() => void keep(came.done)}>
              Carry over
            </Button>
          </div>
        </>
      )}
    </>
  )
}

/** A length on the picture: on paper where its dots per inch are known, else in its points. */
function onPicture(pixels: number, dpi: number | undefined, unit: Unit): string {
  if (dpi === undefined) return `${pixels.toFixed(1)} px`
  return unit === 'in' ? `${(pixels / dpi).toFixed(4)}"` : `${((25.4 * pixels) / dpi).toFixed(3)} mm`
}

const off = (residual: readonly [number, number] | undefined, dpi: number | undefined, unit: Unit): string =>
  residual === undefined ? '' : `off by ${onPicture(Math.hypot(...residual), dpi, unit)}`

function agreementInWords({ s, dof }: PictureMapping, dpi: number | undefined, unit: Unit): string {
  if (dof === 0) return 'Nothing checks these places yet: they agree whatever they are. Pick one more.'
  return `A place is carried over with a standard uncertainty of about ${onPicture(s, dpi, unit)} each way, by what these places leave over.`
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`

function goesAlong(job: Job, sheet: string): string {
  const { views, marks, notes } = whatIsOn(job, sheet)
  const all = [
    counted(views.length, 'view', 'views'),
    counted(marks.length, 'mark', 'marks'),
    counted(notes.length, 'note', 'notes'),
  ]
  return `${all.join(', ')} are carried over, each as sure as it was together with that. No stroke counts as found on the new picture: pick again where it matters. One undo takes all of it back.`
}
