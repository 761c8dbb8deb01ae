/** Whether somebody writes in what has the keyboard. */
export const isWritingIn = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && (target.isContentEditable || target.matches('input, textarea, select'))

/** A field keeps what is written when it is left, which it is not when it is taken from under the hand. */
export function leaveField(): void {
  const { activeElement } = document
  if (activeElement instanceof HTMLElement && isWritingIn(activeElement)) activeElement.blur()
}
