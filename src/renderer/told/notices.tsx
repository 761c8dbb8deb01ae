import './notices.css'
import { useBench } from '../bench/bench-store.ts'
import { putAway } from '../bench/notices.ts'
import { Button } from '../parts/button.tsx'
import { Icon } from '../parts/icon.tsx'
import { VisuallyHidden } from '../parts/visually-hidden.tsx'

const SHOWN = 3

const TONES = { told: 'Note', caution: 'Caution', failed: 'Not done' } as const

/** What a person is told, newest first, until they put it away. */
export function Notices() {
  const notices = useBench((bench) => bench.notices)
  const more = notices.length - SHOWN
  return (
    <section className="notices" aria-label="Notices" aria-live="polite">
      {notices
        .slice(-SHOWN)
        .reverse()
        .map(({ id, tone, sentence }) => (
          <div className="notices-one" data-tone={tone} key={id}>
            <Icon name={tone} />
            <p className="notices-words">
              <VisuallyHidden>{TONES[tone]}: </VisuallyHidden>
              {sentence}
            </p>
            <Button kind="quiet" icon="close" label="Dismiss this notice" onPress={() => putAway(id)} />
          </div>
        ))}
      {more > 0 && (
        <div className="notices-more">
          <Button
            onPress={() => {
              for (const { id } of notices) putAway(id)
            }}
          >
            Dismiss all {notices.length}
          </Button>
        </div>
      )}
    </section>
  )
}
