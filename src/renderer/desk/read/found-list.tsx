import './found-list.css'
import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react'
import { useBench } from '../../bench/bench-store.ts'
import { choose } from '../../bench/choose.ts'
import { makeEdit } from '../../bench/edits.ts'
import { orderAnew } from '../../bench/readings.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Switch } from '../../parts/switch.tsx'
import { type FigureOnSheet, inOrder } from '../../reading/found-figures.ts'
import { FoundRow } from './found-row.tsx'
import { useListOrder } from './list-order.ts'

const ORDERS = [
  { id: 'doubt', label: 'Doubtful first' },
  { id: 'place', label: 'As they stand' },
] as const

interface FoundListProps {
  sheet: string
  found: readonly FigureOnSheet[]
  /** Whether all of the sheet is read by now. */
  whole: boolean
  writable: boolean
  /** @param writes whether it is to be written otherwise */
  onTake: (id: number, writes: boolean) => void
}

/** What was found on a sheet, to be taken, corrected or dismissed one by one. The one that is chosen is outlined on the sheet. */
export function FoundList({ sheet, found, whole, writable, onTake }: FoundListProps) {
  const { order, all } = useListOrder()
  const chosen = useBench(({ selection }) =>
    selection?.kind === 'found figure' && selection.sheet === sheet ? selection.id : null,
  )
  const listed = inOrder(found, order).filter(({ id, state }) => all || state === 'open' || id === chosen)
  const at = listed.findIndex(({ id }) => id === chosen)
  const figure = listed[at]
  const list = useRef<HTMLDivElement>(null)
  const id = useId()
  const [done, setDone] = useState('')
  useKeptPlace(list, sheet, chosen)

  const go = (place: number): void => {
    const next = listed[Math.max(0, Math.min(listed.length - 1, place))]
    if (next !== undefined) choose({ kind: 'found figure', sheet, id: next.id })
  }
  const act = useActs({
    sheet,
    figure,
    writable,
    onTake,
    done: setDone,
    after: () => go(at + 1 < listed.length ? at + 1 : at - 1),
  })
  const pressed = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey) return
    const meant = keyMeant(event.key, { at, last: listed.length - 1, go, ...act })
    if (!meant) return
    event.preventDefault()
    event.stopPropagation()
  }
  const begin = (): void => {
    if (chosen !== null) return
    const last = listed.findIndex((one) => one.id === useListOrder.getState().last[sheet])
    go(Math.max(0, last))
  }
  return (
    <>
      <Choice
        label="In which order"
        hideLabel
        value={order}
        options={ORDERS}
        onChange={(next) => {
          // What was read again kept its place until somebody asks for an order.
          orderAnew(sheet)
          useListOrder.setState({ order: next })
        }}
      />
      <Switch
        label="Show what was taken or dismissed"
        on={all}
        onChange={(on) => useListOrder.setState({ all: on })}
      />
      {listed.length === 0 ? (
        <p className="block-soft">
          {whole
            ? 'All figures of this sheet were taken or dismissed.'
            : 'All that was read so far was taken or dismissed.'}
        </p>
      ) : (
        <div
          ref={list}
          className="found-list"
          role="listbox"
          aria-label="Figures of this sheet"
          aria-activedescendant={at < 0 ? undefined : `${id}-${figure?.id}`}
          tabIndex={0}
          onKeyDown={pressed}
          onFocus={begin}
        >
          {listed.map((one) => (
            <FoundRow
              key={one.id}
              id={`${id}-${one.id}`}
              sheet={sheet}
              figure={one}
              chosen={one.id === chosen}
              onChoose={() => choose({ kind: 'found figure', sheet, id: one.id })}
              onOpen={act.take}
            />
          ))}
        </div>
      )}
      {writable && listed.length > 0 && <Acts figure={figure} {...act} />}
      <p className="visually-hidden" role="status">
        {done}
      </p>
    </>
  )
}

/** What can be done with the figure that is chosen. */
interface FigureActs {
  take: () => void
  correct: () => void
  dismiss: () => void
}

interface ActsOn {
  sheet: string
  figure: FigureOnSheet | undefined
  writable: boolean
  onTake: (id: number, writes: boolean) => void
  /** Told what was done. */
  done: (said: string) => void
  /** Goes on to the next one. */
  after: () => void
}

function useActs({ sheet, figure, writable, onTake, done, after }: ActsOn): FigureActs {
  const take = (writes: boolean): void => {
    if (figure === undefined) return
    if (figure.taken !== undefined) choose({ kind: 'dimension', name: figure.taken.dimension })
    else if (writable) onTake(figure.id, writes)
  }
  const dismiss = (): void => {
    if (figure === undefined || !writable || figure.state === 'taken') return
    void dismissOrRecall(sheet, figure).then((kept) => {
      if (!kept) return
      done(
        figure.state === 'dismissed' ? 'To be looked at again.' : 'Dismissed. Control and Z take that back.',
      )
    })
    if (figure.state !== 'dismissed') after()
  }
  return { take: () => take(false), correct: () => take(true), dismiss }
}

function dismissOrRecall(sheet: string, { dismissed, reading }: FigureOnSheet): Promise<boolean> {
  if (dismissed !== undefined) return makeEdit({ do: 'recall-figure', sheet, box: dismissed })
  const text = reading.text ?? reading.asRead
  const read = text === '' ? {} : { read: { text, probability: Number(reading.probability.toFixed(4)) } }
  return makeEdit({ do: 'dismiss-figure', sheet, item: { box: [...reading.box], ...read } })
}

interface KeysOf extends FigureActs {
  at: number
  last: number
  go: (place: number) => void
}

/** Whether a key meant something in the list. */
function keyMeant(key: string, { at, last, go, take, correct, dismiss }: KeysOf): boolean {
  switch (key.length === 1 ? key.toLowerCase() : key) {
    case 'ArrowDown':
    case 'n':
      go(at + 1)
      return true
    case 'ArrowUp':
    case 'p':
      go(at - 1)
      return true
    case 'Home':
      go(0)
      return true
    case 'End':
      go(last)
      return true
    case 'Enter':
      take()
      return true
    case 'c':
      correct()
      return true
    case 'x':
      dismiss()
      return true
    default:
      return false
  }
}

/** The list keeps the chosen one in sight, and has the keyboard again after the form that was in its place. */
function useKeptPlace(
  list: React.RefObject<HTMLDivElement | null>,
  sheet: string,
  chosen: number | null,
): void {
  useEffect(() => {
    // A form, or the card of a dimension, was here, and what had the keyboard is gone with it.
    if (document.activeElement === document.body && useListOrder.getState().last[sheet] !== undefined) {
      list.current?.focus({ preventScroll: true })
    }
  }, [list, sheet])
  useEffect(() => {
    if (chosen === null) return
    useListOrder.setState(({ last }) => ({ last: { ...last, [sheet]: chosen } }))
    list.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' })
  }, [list, sheet, chosen])
}

function Acts({ figure, take, correct, dismiss }: FigureActs & { figure: FigureOnSheet | undefined }) {
  const state = figure?.state
  return (
    <div className="block-row found-list-acts">
      <Button kind="main" shortcut="Enter" disabled={figure === undefined} onPress={take}>
        {state === 'taken' ? 'Its card' : 'Take'}
      </Button>
      <Button shortcut="C" disabled={figure === undefined || state === 'taken'} onPress={correct}>
        Correct
      </Button>
      <Button shortcut="X" disabled={figure === undefined || state === 'taken'} onPress={dismiss}>
        {state === 'dismissed' ? 'Show again' : 'Dismiss'}
      </Button>
    </div>
  )
}
