/** A rectangle of a page in which a figure is, pixels; turned about its centre where an angle is given. */
export interface BoxToRead {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  /**
   * Degrees clockwise on the page by which the lettering is turned from level, where it is known: then width is along it
   * and height across it. Found out unless it is given.
   */
  readonly angle?: number
  /** Height of a full digit, pixels of the page, where that is known as well as the angle. */
  readonly digitHeight?: number
}
