/** The kinds of scan that can be brought in. */
export const SCAN_TYPES = ['image/png', 'image/jpeg', 'image/webp', 'image/tiff', 'application/pdf']

/** Opens the system's dialog to choose scans, where the window shows a button for that. */
export function askForScans(): void {
  document.querySelector<HTMLInputElement>('[data-scans] input[type="file"]')?.click()
}
