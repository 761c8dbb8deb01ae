import './how-it-goes.css'
import type { ReactNode } from 'react'
import { Figure } from '../parts/figure.tsx'

interface Step {
  name: string
  words: string
  drawing: ReactNode
}

/** A bracket with a hole, on a sheet that has shrunk a little out of square. */
const PART = 'M58 78V34h22l26 26h22v18z'

const STEPS: readonly Step[] = [
  {
    name: 'Sheet',
    words: 'The scan is laid on the bench as it is. Nothing is ever changed in it.',
    drawing: (
      <>
        <path className="how-thin" d="M24 16l132-4 3 88-136 2z" />
        <path d={PART} />
        <circle cx="72" cy="60" r="6" />
      </>
    ),
  },
  {
    name: 'Scale',
    words: 'A size that is printed, along and across, says how large the drawing really is.',
    drawing: (
      <>
        <path className="how-soft" d={PART} />
        <path className="how-thin" d="M58 82v16M128 82v16M54 34H34M54 78H34" />
        <path
          className="how-strong"
          d="M58 94h70M58 94l7-2.5v5zM128 94l-7-2.5v5zM38 34v44M38 34l-2.5 7h5zM38 78l-2.5-7h5z"
        />
      </>
    ),
  },
  {
    name: 'Pick',
    words: 'Mark the ends of what you want to know, under the lens, and give it a name.',
    drawing: (
      <>
        <path className="how-soft" d={PART} />
        <path className="how-strong" d="M74 34h12M80 28v12M100 60h12M106 54v12" />
        <path className="how-dashed" d="M80 34l26 26" />
        <circle className="how-thin" cx="106" cy="60" r="19" />
      </>
    ),
  },
]

/** The work in four drawings, for somebody who has never seen it. */
export function HowItGoes() {
  return (
    <section className="how" aria-labelledby="how-title">
      <h2 id="how-title" className="how-title">
        How it goes
      </h2>
      <ol className="how-steps">
        {STEPS.map(({ name, words, drawing }) => (
          <li key={name} className="how-step">
            <svg className="how-drawing" viewBox="0 0 180 112" aria-hidden="true">
              {drawing}
            </svg>
            <p>
              <b>{name}.</b> {words}
            </p>
          </li>
        ))}
        <li className="how-step">
          <div className="how-row">
            <span>slope_length</span>
            <Figure text={'9.198" ± 0.042", near 9 3/16"'} />
            <span>scaled</span>
          </div>
          <p>
            <b>Table.</b> Each dimension with its value, how sure it is, what it rests on, and whether the
            rest agrees.
          </p>
        </li>
      </ol>
    </section>
  )
}
