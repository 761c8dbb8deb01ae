import './zoom-buttons.css'
import { useEffect, useRef } from 'react'
import { Button, Group } from 'react-aria-components'
import { useBench } from '../bench/bench-store.ts'
import { cameraOf, cameras } from '../camera/camera-store.ts'
import { showActualPixels, showWholeSheet, zoomIn, zoomOut } from '../camera/look-at.ts'

const BUTTONS = [
  { words: '−', name: 'Zoom out', key: '-', act: zoomOut },
  { words: '+', name: 'Zoom in', key: '+', act: zoomIn },
  { words: 'Whole sheet', name: 'Whole sheet', key: 'W', act: showWholeSheet },
  { words: '1 : 1', name: '1 : 1', key: 'Z', act: showActualPixels },
]

/** How near the sheet is looked at: by hand, and as a share of actual pixels. */
export function ZoomButtons() {
  const scale = useRef<HTMLSpanElement>(null)
  const sheet = useBench((bench) => bench.sheet)
  useEffect(() => {
    const show = (): void => {
      const zoom = cameraOf(sheet)?.zoom
      const percent = zoom === undefined ? '' : inPercent(100 * zoom * (window.devicePixelRatio || 1))
      if (scale.current !== null && scale.current.textContent !== percent) scale.current.textContent = percent
    }
    show()
    return cameras.subscribe(show)
  }, [sheet])
  return (
    <Group className="zoom-buttons" aria-label="How near the sheet is">
      {BUTTONS.map(({ words, name, key, act }) => (
        <Button
          key={name}
          className="zoom-buttons-button"
          aria-label={`${name} (key ${key}${isEverywhere(key) ? '' : ' on the sheet'})`}
          onPress={act}
        >
          {words}
        </Button>
      ))}
      <span className="zoom-buttons-scale" ref={scale} />
    </Group>
  )
}

/** Letters mean it wherever the keyboard is; signs are written elsewhere. */
const isEverywhere = (key: string): boolean => /^[A-Z]$/.test(key)

const inPercent = (percent: number): string => `${percent < 10 ? percent.toFixed(1) : Math.round(percent)} %`
