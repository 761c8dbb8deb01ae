import './drop-hint.css'

/** Over all of the window while files are held over it: what comes of letting go. */
export function DropHint({ words }: { words: string }) {
  return <div className="drop-hint">{words}</div>
}
