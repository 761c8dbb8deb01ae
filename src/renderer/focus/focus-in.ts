/** What has the keyboard first in a part of the window, most wanted first. */
const FIRST = [
  '[data-first]',
  '[role="application"]',
  '[role="grid"]',
  'button:not([disabled])',
  'input:not([disabled])',
  '[tabindex="0"]',
]

/** Moves the keyboard into a part of the window; false when nothing in it takes it. */
export function focusIn(part: Element): boolean {
  for (const wanted of FIRST) {
    const inside = part.querySelector<HTMLElement>(wanted)
    inside?.focus()
    if (inside !== null && part.contains(document.activeElement)) return true
  }
  return false
}
