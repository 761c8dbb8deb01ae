import { InvalidArgumentError } from 'commander'

/** Takes the text of an option that must say something. @throws InvalidArgumentError when it is blank */
export const notBlank =
  (advice: string) =>
  (text: string): string => {
    if (text.trim() !== '') return text.trim()
    throw new InvalidArgumentError(advice)
  }

/** Takes a number above 0. @throws InvalidArgumentError for anything else */
export const aboveZero =
  (advice: string) =>
  (text: string): number => {
    const value = Number(text)
    if (text.trim() !== '' && Number.isFinite(value) && value > 0) return value
    throw new InvalidArgumentError(advice)
  }
