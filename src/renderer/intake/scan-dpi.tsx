import type { PageLook } from '../../contract/scan-look.ts'
import { TextField } from '../parts/text-field.tsx'
import { dpiInFile } from './page-words.ts'

interface ScanDpiProps {
  looked: readonly PageLook[]
  value: string
  onChange: (value: string) => void
  error: string
}

/** The resolution of scanned pages, where the file is wrong or says nothing. */
export function ScanDpi({ looked, value, onChange, error }: ScanDpiProps) {
  return (
    <TextField
      label="Resolution of the scans"
      suffix="dpi"
      inputMode="decimal"
      value={value}
      onChange={onChange}
      placeholder={dpiInFile(looked)}
      error={error}
      note="Only where the file is wrong or says nothing. Lengths come from sizes known on the sheet, never from this."
    />
  )
}
