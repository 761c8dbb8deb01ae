import './banners.css'
import { useBench } from '../bench/bench-store.ts'
import { Icon } from '../parts/icon.tsx'
import { LookAgain } from './look-again.tsx'
import { MendJob } from './mend-job.tsx'
import { TakeOver } from './take-over.tsx'

const NOT_ANSWERING =
  'The workbench no longer answers. Everything up to the last saving is on disk. It goes on by itself when it answers again; if it was ended, start it anew with “scantling open”.'

/** What holds for the whole job as long as it is open: that it can only be looked at, that a scan is not as it was. */
export function Banners() {
  const opened = useBench((bench) => bench.opened)
  const connected = useBench((bench) => bench.connected)
  const wrongScans = opened?.scans.filter(({ state }) => state !== 'ok') ?? []
  return (
    <div className="frame-banners banners" role="status">
      {!connected && (
        <p className="banners-one" data-tone="failed">
          <Icon name="failed" />
          {NOT_ANSWERING}
        </p>
      )}
      {opened !== null && !opened.writable && (
        <p className="banners-one" data-read-only>
          <Icon name="caution" />
          <span className="banners-words">{opened.readOnlyBecause ?? 'This job is open read-only.'}</span>
          {opened.lock !== undefined && <TakeOver job={opened.id} lock={opened.lock} />}
          {opened.damaged === true && <MendJob job={opened.id} title={opened.job.title} />}
          <LookAgain job={opened.id} free={opened.free === true} />
        </p>
      )}
      {opened?.wentOn !== undefined && (
        <p className="banners-one" data-went-on>
          <Icon name="caution" />
          <span className="banners-words">{opened.wentOn}</span>
        </p>
      )}
      {wrongScans.map(({ sheet, sentence }) => (
        <p className="banners-one" key={sheet}>
          <Icon name="caution" />
          {sentence}
        </p>
      ))}
    </div>
  )
}
