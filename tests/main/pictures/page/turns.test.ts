import { describe, expect, test } from 'vitest'
import { Turns } from '../../../../src/main/services/pictures/page/turns.ts'

const whoever = new AbortController().signal

describe('turns', () => {
  test('are taken one at a time, by whoever came last first', async () => {
    const turns = new Turns()
    const done: string[] = []
    const first = await turns.take(whoever)
    const others = ['second', 'third'].map(async (name) => {
      const end = await turns.take(whoever)
      done.push(name)
      end?.()
    })
    expect(done).toEqual([])
    first?.()
    await Promise.all(others)
    expect(done).toEqual(['third', 'second'])
  })

  test('are waited for no longer than is wanted, while another one is still at it', async () => {
    const turns = new Turns()
    const end = await turns.take(whoever)
    const stop = new AbortController()
    const [left, stays] = [turns.take(stop.signal), turns.take(whoever)]
    stop.abort()
    expect(await left).toBeNull()
    end?.()
    expect(await stays).not.toBeNull()
  })

  test('that are not wanted when they are asked for are not taken', async () => {
    const turns = new Turns()
    expect(await turns.take(AbortSignal.abort())).toBeNull()
    expect(await turns.take(whoever)).not.toBeNull()
  })
})
