import { FileTrigger } from 'react-aria-components'
import { SCAN_TYPES } from './ask-for-scans.ts'
import { Button } from './button.tsx'

interface ScanFilesProps {
  words: string
  onFiles: (files: File[]) => void
  kind?: 'plain' | 'main'
  disabled?: boolean
}

/** A button that lets a person choose scans from this machine. */
export function ScanFiles({ words, onFiles, kind = 'plain', disabled = false }: ScanFilesProps) {
  return (
    <div data-scans>
      <FileTrigger
        acceptedFileTypes={SCAN_TYPES}
        allowsMultiple
        onSelect={(files) => {
          if (files !== null && files.length > 0) onFiles([...files])
        }}
      >
        <Button icon="plus" kind={kind} disabled={disabled}>
          {words}
        </Button>
      </FileTrigger>
    </div>
  )
}
