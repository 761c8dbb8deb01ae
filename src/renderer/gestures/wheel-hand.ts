/** A turn of the wheel that follows so soon is of the same hand, ms. */
const SAME_TURN = 250
/** What a browser calls one notch, whatever the notch moves. */
const NOTCH = 120

/** A wheel event as browsers also give it: in 120ths of a notch. Left out of the standard, and in all of them. */
type WithNotches = WheelEvent & { wheelDeltaY?: number }

/**
 * Tells fingers on a touchpad from a mouse's wheel. A wheel turns up and down by whole notches; fingers go anywhere by
 * little steps. Common practice, no source: no browser says which of the two it is.
 */
export class WheelHand {
  #until = 0
  #fingers = false

  isFingers(event: WheelEvent): boolean {
    if (event.timeStamp > this.#until) this.#fingers = !isNotches(event)
    this.#until = event.timeStamp + SAME_TURN
    return this.#fingers
  }
}

function isNotches({ deltaMode, deltaX, deltaY, wheelDeltaY = 0 }: WithNotches): boolean {
  if (deltaMode !== WheelEvent.DOM_DELTA_PIXEL) return true
  if (deltaX !== 0) return false
  // Of fingers browsers make three 120ths of each pixel that they went.
  if (wheelDeltaY === -3 * deltaY) return false
  return Math.abs(wheelDeltaY) % NOTCH === 0 || Math.abs(deltaY) >= NOTCH / 2
}
