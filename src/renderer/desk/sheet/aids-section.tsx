import { degrees } from '../../../core/geometry/angle-units.ts'
import { aidsOf, useBench } from '../../bench/bench-store.ts'
import { lookWith } from '../../bench/choose.ts'
import { PLAIN } from '../../looking/aids.ts'
import { sameAids, startingAids } from '../../looking/starting-aids.ts'
import { Button } from '../../parts/button.tsx'
import { Section } from '../../parts/section.tsx'
import { Slider } from '../../parts/slider.tsx'
import { Switch } from '../../parts/switch.tsx'
import { plainTurn, quartersAndRest, turnInWords } from './turn.ts'

/** How the sheet is looked at; what is picked stays in the pixels of the scan. */
export function AidsSection() {
  const aids = useBench((bench) => aidsOf(bench, bench.sheet))
  const start = useBench(({ opened, sheet }) => {
    const found = opened?.job.sheets.find(({ id }) => id === sheet)
    return found === undefined ? PLAIN : startingAids(found)
  })
  const { quarters, rest } = quartersAndRest(aids.turn)
  const turn = (angle: number) => lookWith({ turn: plainTurn(degrees(angle)) })
  return (
    <Section
      title="Display"
      aside={
        <Button kind="quiet" disabled={sameAids(aids, start)} onPress={() => lookWith(start)}>
          Reset
        </Button>
      }
    >
      <p className="block-soft">
        These change the look of the sheet only: the scan and all picks stay as they are.
      </p>
      <div className="block-row">
        <Button icon="turn-left" label="Turn a quarter anticlockwise" onPress={() => turn(aids.turn - 90)} />
        <Button icon="turn-right" label="Turn a quarter clockwise" onPress={() => turn(aids.turn + 90)} />
        <span className="block-beside">{turnInWords(aids.turn)}</span>
      </div>
      <Slider
        label="Fine turn"
        value={rest}
        least={-45}
        most={45}
        step={0.1}
        words={(value) => `${value.toFixed(1).replace('-', '−')}°`}
        onChange={(value) => turn(90 * quarters + value)}
      />
      <Slider
        label="Contrast"
        value={aids.contrast}
        least={0.5}
        most={3}
        step={0.1}
        words={(value) => `× ${value.toFixed(1)}`}
        onChange={(contrast) => lookWith({ contrast })}
      />
      <Switch
        label="Fade stains"
        note="Folds as well, so that the lines stand out."
        on={aids.lift}
        onChange={(lift) => lookWith({ lift })}
      />
      <Switch
        label="Negative"
        note="Light for dark: a blueprint reads as dark on light."
        on={aids.negative}
        onChange={(negative) => lookWith({ negative })}
      />
      <Switch
        label="Mirror"
        note="For a sheet that was scanned from its back."
        on={aids.mirror}
        onChange={(mirror) => lookWith({ mirror })}
      />
    </Section>
  )
}
