import './history-section.css'
import { useState } from 'react'
import type { ToldEntry } from '../../contract/history.ts'
import { keepTogether } from '../../core/handoff/table/keep-together.ts'
import { momentInWords } from '../bench/signature.ts'
import { Button } from '../parts/button.tsx'
import { Section } from '../parts/section.tsx'
import { VisuallyHidden } from '../parts/visually-hidden.tsx'
import { type HistoryOf, useHistory } from './use-history.ts'

/** How many are shown at first, and how many times as many each time more are wanted. */
const FEW = 5
const MORE = 10

/** Who did what to a thing, when, and what it was before, the newest first; asked for once it is unfolded. */
export function HistorySection({ of }: { of: HistoryOf }) {
  const [unfolded, setUnfolded] = useState(false)
  const [limit, setLimit] = useState(FEW)
  const { told, refused } = useHistory(of, unfolded ? limit : null)
  return (
    <Section title="History" fold="shut" onFold={setUnfolded}>
      {told === null && <p className="block-soft">{refused ?? 'Reading the history…'}</p>}
      {told?.entries.length === 0 && (
        <p className="block-soft">Nobody wrote down when anything was done to it.</p>
      )}
      {told !== null && told.entries.length > 0 && (
        <ol className="history-section">
          {told.entries.map((entry, i) => (
            <Entry entry={entry} key={entry.n ?? `before ${i}`} />
          ))}
        </ol>
      )}
      {told?.more === true && (
        <div className="block-row">
          <Button kind="quiet" onPress={() => setLimit(limit * MORE)}>
            Show what was done before
          </Button>
        </div>
      )}
    </Section>
  )
}

/** Characters of what was done that are shown at first. */
const SHOWN = 240

/** What was done; a long text in it at first in part, and whole when that is asked for. */
function Did({ what }: { what: string }) {
  const [whole, setWhole] = useState(false)
  if (what.length <= SHOWN) return <p>{keepTogether(what)}</p>
  return (
    <>
      <p>
        {keepTogether(
          whole ? what : `${what.slice(0, what.lastIndexOf(' ', SHOWN) + 1 || SHOWN).trimEnd()}…`,
        )}
      </p>
      <Button kind="quiet" onPress={() => setWhole(!whole)}>
        {whole ? 'Show less' : 'Show it whole'}
      </Button>
    </>
  )
}

function Entry({ entry: { n, at, who, did } }: { entry: ToldEntry }) {
  return (
    <li>
      <span className="history-section-number">
        {n !== null && <VisuallyHidden>Edit </VisuallyHidden>}
        {n ?? ''}
      </span>
      <div className="history-section-did">
        <p className="history-section-when">
          {who ?? 'Somebody'}, {momentInWords(at)}
        </p>
        {did.map((what, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the same can be done twice at once, and the list never changes.
          <Did key={i} what={what} />
        ))}
      </div>
    </li>
  )
}
