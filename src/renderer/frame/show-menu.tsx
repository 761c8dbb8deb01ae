import { useBench } from '../bench/bench-store.ts'
import { showOnSheet } from '../bench/settings.ts'
import { SHOWS, type Shows } from '../bench/shows.ts'
import { Menu } from '../parts/menu.tsx'

const WORDS: Readonly<Record<Shows, string>> = {
  none: 'Nothing',
  chosen: 'What is chosen',
  view: 'This view',
  all: 'All',
}

const OPTIONS = SHOWS.map((id) => ({ id, label: WORDS[id] }))

/** How much is drawn over the sheet. What is not drawn is not hit by a click either. */
export function ShowMenu() {
  const shows = useBench((bench) => bench.shows)
  return (
    <div className="show-menu">
      <Menu
        label="Shown on the sheet (key M)"
        words={WORDS[shows]}
        icon="shown"
        options={OPTIONS}
        value={shows}
        onChange={(id) => {
          const chosen = SHOWS.find((one) => one === id)
          if (chosen !== undefined) showOnSheet(chosen)
        }}
      />
    </div>
  )
}
