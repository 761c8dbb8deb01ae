import './slider.css'
import { Slider as AriaSlider, Label, SliderOutput, SliderThumb, SliderTrack } from 'react-aria-components'

interface SliderProps {
  label: string
  value: number
  onChange: (value: number) => void
  least: number
  most: number
  step: number
  /** The value in words, e.g. `2.5°`. */
  words: (value: number) => string
}

export function Slider({ label, value, onChange, least, most, step, words }: SliderProps) {
  return (
    <AriaSlider
      className="slider"
      value={value}
      onChange={(now) => onChange(Array.isArray(now) ? (now[0] ?? value) : now)}
      minValue={least}
      maxValue={most}
      step={step}
    >
      <Label className="slider-label">{label}</Label>
      <SliderOutput className="slider-value">{words(value)}</SliderOutput>
      <SliderTrack className="slider-track">
        <SliderThumb className="slider-thumb" />
      </SliderTrack>
    </AriaSlider>
  )
}
