import { useId } from 'react';

interface SlideProps {
  readonly name: string;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly value: number;
  readonly say: (value: number) => string;
  readonly onSlide: (value: number) => void;
}

/** A native slider with its name and its value in words. */
export function Slide({ name, least, most, step, value, say, onSlide }: SlideProps) {
  const id = useId();
  return (
    <div className="lesson-slide">
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        type="range"
        min={least}
        max={most}
        step={step}
        value={value}
        aria-valuetext={say(value)}
        onChange={({ target }) => onSlide(Number(target.value))}
      />
      <output className="figure" htmlFor={id}>
        {say(value)}
      </output>
    </div>
  );
}
