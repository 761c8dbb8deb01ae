/**
 * Whether a scan's name stays inside the job's folder of scans on every system: no absolute path, drive, empty or
 * dotted part, backslash or control character. `/` parts folders.
 */
export function isScanName(name: string): boolean {
  const dotted = name.split('/').some((part) => part === '' || part === '.' || part === '..')
  return !dotted && !/^[A-Za-z]:|[\\\p{Cc}]/u.test(name)
}
