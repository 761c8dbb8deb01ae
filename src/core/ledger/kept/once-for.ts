/** Works something out of each object once, for as long as the object is there. */
export function onceFor<K extends object, V>(make: (of: K) => V): (of: K) => V {
  const made = new WeakMap<K, V>()
  return (of) => {
    const known = made.get(of)
    if (known !== undefined) return known
    const value = make(of)
    made.set(of, value)
    return value
  }
}
