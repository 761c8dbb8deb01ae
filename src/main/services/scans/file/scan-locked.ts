import { ServiceError } from '../../service-error.ts'

/** A scan that can't be read without its password. */
export class ScanLocked extends ServiceError {
  override name = 'ScanLocked'
}

/** @param given whether a password was given, and is not the one */
export const lockedSentence = (called: string, given: boolean): string =>
  given
    ? `The password does not open the scan ${called}: type it as whoever locked it wrote it, capitals included.`
    : `The scan ${called} is locked: give its password.`
