import './long-work.css'
import { useBench } from '../bench/bench-store.ts'
import { Button } from '../parts/button.tsx'
import { Progress } from '../parts/progress.tsx'

/** Work that takes a while: what is being done, how far it is, and a way to stop it. */
export function LongWork() {
  const work = useBench((bench) => bench.work)
  if (work.length === 0) return null
  return (
    <section className="long-work" aria-label="Work going on">
      {work.map(({ id, name, done, cancel }) => (
        <Progress key={id} name={name} done={done}>
          {cancel !== undefined && (
            <Button kind="quiet" onPress={cancel} label={`Stop: ${name}`}>
              Stop
            </Button>
          )}
        </Progress>
      ))}
    </section>
  )
}
