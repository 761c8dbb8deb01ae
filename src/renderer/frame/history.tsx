import './history.css'
import { Button, Tooltip, TooltipTrigger } from 'react-aria-components'
import { useBench } from '../bench/bench-store.ts'
import { redo, undo } from '../bench/edits.ts'
import { Icon } from '../parts/icon.tsx'

const WORDS = {
  undo: { verb: 'Undo', nothing: 'Nothing to undo', keys: 'Ctrl+Z', act: undo },
  redo: { verb: 'Redo', nothing: 'Nothing to redo', keys: 'Ctrl+Shift+Z', act: redo },
} as const

/** Takes the last edit back, or makes it again; says which that is. */
export function History({ which }: { which: 'undo' | 'redo' }) {
  const { verb, nothing, keys, act } = WORDS[which]
  const name = useBench(({ opened }) => (which === 'undo' ? opened?.undoName : opened?.redoName))
  const writable = useBench(({ opened }) => opened?.writable === true)
  const can = writable && name !== undefined
  return (
    <TooltipTrigger delay={500}>
      <Button
        className="history"
        isDisabled={!can}
        aria-label={can ? `${verb} ${name}` : nothing}
        onPress={() => void act()}
      >
        <Icon name={which} />
        <span className="history-name">{can ? name : nothing}</span>
      </Button>
      <Tooltip className="button-hint" offset={6}>
        {can ? `${verb} ${name}` : nothing} ({keys})
      </Tooltip>
    </TooltipTrigger>
  )
}
