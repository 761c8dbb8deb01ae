import './choice-list.css'
import { type KeyboardEvent, useEffect, useId, useRef } from 'react'
import { Figure } from '../../parts/figure.tsx'
import { chanceWords } from '../../reading/chance-words.ts'
import type { FigureChoice } from '../../reading/figure-choices.ts'

interface ChoiceListProps {
  choices: readonly FigureChoice[]
  /** Which one is chosen, by its figure; null: something else is written. */
  chosen: string | null
  onChoose: (text: string) => void
  /** Something else is to be written. */
  onWrite: () => void
  onTake: () => void
  /** Whether the keyboard comes here as it appears. */
  takesKeyboard: boolean
}

/** What a figure could be, likeliest first: arrows and digits choose, Enter takes. */
export function ChoiceList(props: ChoiceListProps) {
  const { choices, chosen, onChoose, onWrite, onTake, takesKeyboard } = props
  const list = useRef<HTMLDivElement>(null)
  const id = useId()
  const at = choices.findIndex(({ text }) => text === chosen)
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, as it appears
  useEffect(() => {
    if (takesKeyboard) list.current?.focus({ preventScroll: true })
  }, [])
  const choose = (place: number): void => {
    const one = choices[Math.max(0, Math.min(choices.length - 1, place))]
    if (one !== undefined) onChoose(one.text)
  }
  const pressed = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey) return
    if (!meant(event.key)) return
    event.preventDefault()
    event.stopPropagation()
  }
  const meant = (key: string): boolean => {
    if (/^[1-9]$/.test(key)) {
      if (Number(key) <= choices.length) choose(Number(key) - 1)
      return true
    }
    switch (key) {
      case 'ArrowDown':
        choose(at + 1)
        return true
      case 'ArrowUp':
        choose(at < 0 ? choices.length - 1 : at - 1)
        return true
      case 'Home':
        choose(0)
        return true
      case 'End':
        choose(choices.length - 1)
        return true
      case 'Enter':
        onTake()
        return true
      case 'c':
      case 'C':
        onWrite()
        return true
      default:
        return false
    }
  }
  return (
    <div
      ref={list}
      className="choice-list"
      role="listbox"
      aria-label="What it could be"
      aria-activedescendant={at < 0 ? undefined : `${id}-${at}`}
      tabIndex={0}
      onKeyDown={pressed}
    >
      {choices.map(({ text, probability, says }, i) => (
        // biome-ignore lint/a11y/useKeyWithClickEvents: the list has the keys
        // biome-ignore lint/a11y/useFocusableInteractive: the list has the keyboard, and says which one is chosen
        <div
          key={text}
          id={`${id}-${i}`}
          className="choice-list-one"
          role="option"
          aria-selected={i === at}
          onClick={() => onChoose(text)}
        >
          <span className="choice-list-key" aria-hidden="true">
            {i + 1}
          </span>
          <span className="choice-list-figure">
            <Figure text={text} />
          </span>
          <span className="choice-list-share">{chanceWords(probability)}</span>
          <span className="choice-list-bar" aria-hidden="true">
            <span style={{ width: `${100 * probability}%` }} />
          </span>
          <span className="choice-list-says">{says.join('; ')}</span>
        </div>
      ))}
    </div>
  )
}
