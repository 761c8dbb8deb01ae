/** Colours that things are drawn over a sheet with. They follow the picture under them, not the theme of the window. */
export interface Inks {
  ink: string
  wrong: string
  chosen: string
  /** About what is chosen, so that it is told from the paper by more than its tint. */
  rim: string
  /** Laid under lines and lettering. */
  ground: string
}

/** Reads the inks for a sheet that is dark on light as it is shown, or light on dark. */
export function inksFor(dark: boolean): Inks {
  const style = getComputedStyle(document.documentElement)
  const token = (name: string): string =>
    style.getPropertyValue(`--${dark ? 'over-dark' : 'over-light'}-${name}`)
  return {
    ink: token('ink'),
    wrong: token('wrong'),
    chosen: token('chosen'),
    rim: token('rim'),
    ground: token('ground'),
  }
}
