/** How many fields have something written in them that is not kept. */
let held = 0

/** Says that a field has something written in it that is not kept; the function that comes back ends that. */
export function holdUnkept(): () => void {
  held++
  return () => {
    held--
  }
}

/** Whether anything is written in a field that is not kept. */
export const isAnyUnkept = (): boolean => held > 0
