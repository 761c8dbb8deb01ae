import type { Degrees } from '../../../core/geometry/angle-units.ts'
import { straightenSheet, takeBackStraightening } from '../../../core/job/from-picks/straighten-sheet.ts'
import type { Sheet } from '../../../core/job/model/types.ts'
import { aidsOf, useBench } from '../../bench/bench-store.ts'
import { lookWith, nextAfter, putDown, takeUp } from '../../bench/choose.ts'
import { makeEdit } from '../../bench/edits.ts'
import { toTheSheet } from '../../focus/to-the-sheet.ts'
import { startingAids, turnFor } from '../../looking/starting-aids.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { SQUARE_UP_KEY } from '../in-hand/tool-keys.ts'
import { slopeInWords, uncertaintyInWords } from './straighten.ts'
import { StraightenForm } from './straighten-form.tsx'

/** How sure each straightening of this session is, by its sheet. */
const sure = new Map<string, { straight: Degrees; u: Degrees }>()

/** Which way a sheet lies on its scan, by its edge or by a line that is meant to be level. */
export function StraightenSection({ sheet }: { sheet: Sheet }) {
  const picks = useBench((bench) => bench.picks)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const mirror = useBench((bench) => aidsOf(bench, sheet.id).mirror)
  const picking = picks.tool.kind === 'straighten'
  const { straight } = sheet
  const known = sure.get(sheet.id)

  const keep = async (to: Degrees, u: Degrees): Promise<void> => {
    const { job } = useBench.getState().opened ?? {}
    if (job === undefined || !(await makeEdit(straightenSheet(job, sheet.id, to)))) return
    sure.set(sheet.id, { straight: to, u })
    lookWith({ turn: turnFor(to, mirror) })
    nextAfter(picks, { kind: 'look' })
    toTheSheet()
  }
  const takeBack = async (): Promise<void> => {
    const { job } = useBench.getState().opened ?? {}
    if (job === undefined || !(await makeEdit(takeBackStraightening(job, sheet.id)))) return
    const now = useBench.getState().opened?.job.sheets.find(({ id }) => id === sheet.id)
    if (now !== undefined) lookWith({ turn: startingAids(now).turn })
  }
  const takeUpTool = (): void => {
    takeUp({ kind: 'straighten' })
    toTheSheet()
  }

  return (
    <Section title="Square up the sheet">
      <p className="block-soft">
        Paper shrinks differently each way. A view with two scales has them along this direction and square to
        it.
      </p>
      <dl className="block-facts">
        <dt>Level edge of the sheet</dt>
        <dd>{straight === undefined ? 'not picked yet' : `${slopeInWords(straight)} on the scan`}</dd>
        <dt>Standard uncertainty</dt>
        <dd>
          {straight === undefined
            ? '—'
            : known?.straight === straight
              ? uncertaintyInWords(known.u)
              : 'not kept from an earlier session'}
        </dd>
      </dl>
      <StraightenForm picks={picks} onKeep={keep} />
      <div className="block-row">
        <Button shortcut={SQUARE_UP_KEY} disabled={!writable || picking} onPress={takeUpTool}>
          Along an edge or line…
        </Button>
        {picking ? (
          <Button kind="quiet" onPress={putDown}>
            Cancel
          </Button>
        ) : (
          <Button kind="quiet" disabled={!writable || straight === undefined} onPress={() => void takeBack()}>
            Take it back
          </Button>
        )}
      </div>
    </Section>
  )
}
