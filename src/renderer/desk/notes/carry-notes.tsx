import { useState } from 'react'
import { FileTrigger } from 'react-aria-components'
import {
  ANNOTATION_TYPE,
  toWebAnnotations,
} from '../../../core/handoff/annotations/out/to-web-annotations.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { tell } from '../../bench/notices.ts'
import { Button } from '../../parts/button.tsx'
import { BroughtIn } from './brought-in.tsx'
import { download, fileNameOf } from './download.ts'

/** Hands notes on to other programs and takes them from there, as W3C Web Annotations. */
export function CarryNotes({ job, writable }: { job: Job; writable: boolean }) {
  const [file, setFile] = useState<File | null>(null)
  const handOn = () => {
    const name = fileNameOf(job.title, 'notes.jsonld')
    download(name, toWebAnnotations(job), ANNOTATION_TYPE)
    tell('told', `The notes were handed on as ${name}.`)
  }
  return (
    <>
      <div className="block-row">
        <Button disabled={job.notes.length === 0} onPress={handOn}>
          Hand notes on
        </Button>
        <FileTrigger
          acceptedFileTypes={['.jsonld', '.json', 'application/ld+json', 'application/json']}
          onSelect={(files) => setFile(files?.[0] ?? null)}
        >
          <Button disabled={!writable}>Bring notes in…</Button>
        </FileTrigger>
      </div>
      <p className="block-soft">As W3C Web Annotations (JSON-LD), which other programs read too.</p>
      {file !== null && <BroughtIn file={file} onDone={() => setFile(null)} />}
    </>
  )
}
