import { JPEG_KINDS, WEBP_KINDS } from './jpeg-kinds.ts'
import { PDF_LIBRARY_KINDS } from './pdf-library-kinds.ts'
import { PDF_LOCKED_KINDS } from './pdf-locked-kinds.ts'
import { PDF_PAGE_KINDS } from './pdf-page-kinds.ts'
import { PDF_SCANNED_KINDS } from './pdf-scanned-kinds.ts'
import { PNG_KINDS } from './png-kinds.ts'
import type { ScanKind } from './scan-kind.ts'
import { TIFF_JPEG_KINDS } from './tiff-jpeg-kinds.ts'
import { TIFF_KINDS } from './tiff-kinds.ts'

/** Kinds that libvips reads by itself. */
export const PICTURE_KINDS: readonly ScanKind[] = [
  ...TIFF_KINDS,
  ...TIFF_JPEG_KINDS,
  ...PNG_KINDS,
  ...JPEG_KINDS,
  ...WEBP_KINDS,
]

export const PDF_KINDS: readonly ScanKind[] = [
  ...PDF_SCANNED_KINDS,
  ...PDF_PAGE_KINDS,
  ...PDF_LIBRARY_KINDS,
  ...PDF_LOCKED_KINDS,
]

export const ALL_KINDS: readonly ScanKind[] = [...PICTURE_KINDS, ...PDF_KINDS]
