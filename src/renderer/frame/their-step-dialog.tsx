import { useBench } from '../bench/bench-store.ts'
import { takeTheirs } from '../bench/edits.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'

const WORDS = {
  undo: {
    title: 'Undo what somebody else did?',
    take: 'Undo theirs',
    did: 'was made by',
    keeps: 'The history keeps both: that it was made, and that you took it back.',
  },
  redo: {
    title: 'Make again what somebody else took back?',
    take: 'Make it again',
    did: 'was taken back by',
    keeps: 'The history keeps both: that it was taken back, and that you made it again.',
  },
} as const

/** Asks before a step back or forth takes somebody else's edit. */
export function TheirStepDialog() {
  const theirs = useBench((bench) => bench.theirs)
  if (theirs === null) return null
  const { title, take, did, keeps } = WORDS[theirs.kind]
  const leave = () => useBench.setState({ theirs: null })
  return (
    <Dialog
      title={title}
      open
      onClose={leave}
      actions={
        <>
          <Button onPress={leave}>Cancel</Button>
          <Button kind="main" onPress={() => void takeTheirs(theirs)}>
            {take}
          </Button>
        </>
      }
    >
      <p>
        “{theirs.name}” {did} {theirs.made}. {keeps}
      </p>
    </Dialog>
  )
}
