import type { Pixel } from '../../../core/geometry/frames.ts'
import { problemOfUse as whyInUse } from '../../../core/job/checks/uses.ts'
import { afterNoun } from '../../../core/job/ids/label.ts'
import type { Job, Mark } from '../../../core/job/model/types.ts'
import { firstPlaces, picksOf, placesOf } from '../../../core/job/picks/picks-of.ts'
import { useBench } from '../../bench/bench-store.ts'
import { choose } from '../../bench/choose.ts'
import { makeEdit } from '../../bench/edits.ts'
import { momentInWords, personName } from '../../bench/signature.ts'
import { HistorySection } from '../../history/history-section.tsx'
import { Button } from '../../parts/button.tsx'
import { SavedField } from '../../parts/saved-field.tsx'
import { Section } from '../../parts/section.tsx'
import { markUncertainty } from '../../strokes/uncertainty-words.ts'
import { reason } from '../../words/window-words.ts'
import { Remove } from '../keeping/remove.tsx'
import { RepeatsSection } from './repeats-section.tsx'
import { StrokeSection } from './stroke-section.tsx'
import { usesOfMark } from './uses-of-mark.ts'

const KINDS: Readonly<Record<Mark['kind'], string>> = {
  point: 'Point',
  line: 'Line',
  circle: 'Circle',
  path: 'Path',
}

/** Where the hand pointed, for what was found from many profiles; else where it was picked. */
const pointedAt = (mark: Mark): readonly Pixel[] =>
  mark.kind !== 'point' && mark.how === 'stroke' ? (mark.stroke?.rough ?? []) : firstPlaces(mark)

const place = ([x, y]: Pixel): string => `${x.toFixed(1)}, ${y.toFixed(1)}`

/** A mark: where it is, how well it was picked, by whom, and what rests on it. */
export function MarkCard({ id }: { id: string }) {
  const job = useBench((bench) => bench.opened?.job)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const mark = job?.marks.find((one) => one.id === id)
  if (job === undefined || mark === undefined) return null
  const uses = usesOfMark(job, id)
  const inUse = whyInUse(job, 'mark', id)
  return (
    <>
      <div className="desk-head">
        <h2 className="desk-station">
          {KINDS[mark.kind]} {afterNoun(mark)}
        </h2>
        <p className="desk-missing">{signature(job, mark)}</p>
      </div>
      <Section title="Where it is">
        <dl className="block-facts">
          <Places name="Picked at" pixels={pointedAt(mark)} />
          <dt>How sure</dt>
          <dd>{markUncertainty(mark)}</dd>
          {mark.kind === 'point' && (
            <Places name="Picked again" pixels={picksOf(mark).slice(1).flatMap(placesOf)} />
          )}
        </dl>
        <SavedField
          label="What it marks"
          value={mark.label ?? ''}
          disabled={!writable}
          onSave={(label) =>
            makeEdit(
              label === ''
                ? { do: 'change-mark', id, clear: ['label'] }
                : { do: 'change-mark', id, set: { label } },
            )
          }
        />
        {mark.how === 'hand' && (
          <SavedField
            label="Standard uncertainty of a pick"
            suffix="px"
            inputMode="decimal"
            value={String(mark.sigma)}
            disabled={!writable}
            note="In each of x and y. One pixel is usual for a clean line picked by hand."
            check={(text) =>
              Number(text) > 0 && Number.isFinite(Number(text)) ? null : reason('written.no-sigma')
            }
            onSave={(text) => makeEdit({ do: 'change-mark', id, set: { sigma: Number(text) } })}
          />
        )}
      </Section>
      <StrokeSection mark={mark} writable={writable} />
      <RepeatsSection mark={mark} writable={writable} />
      <Section title="What rests on it">
        {uses.length === 0 ? (
          <p>Nothing does.</p>
        ) : (
          <ul className="block-words">
            {uses.map(({ words, selection }) => (
              <li key={words}>
                <Button kind="quiet" onPress={() => choose(selection)}>
                  {words}
                </Button>
              </li>
            ))}
          </ul>
        )}
        <Remove
          words="Remove this mark"
          writable={writable}
          because={inUse === null ? null : reason('picked.mark-in-use')}
          onRemove={() => void makeEdit({ do: 'remove-mark', id })}
        />
      </Section>
      <HistorySection of={{ kind: 'mark', id }} />
    </>
  )
}

function Places({ name, pixels }: { name: string; pixels: readonly Pixel[] }) {
  if (pixels.length === 0) return null
  return (
    <>
      <dt>{name}</dt>
      {[...new Set(pixels.map(place))].map((at) => (
        <dd key={at}>{at} px</dd>
      ))}
    </>
  )
}

function signature(job: Job, mark: Mark): string {
  const how = mark.how === 'hand' ? 'Picked by hand' : 'Found on a stroke'
  return `${how} by ${personName(job, mark.by)}, ${momentInWords(mark.at)}`
}
