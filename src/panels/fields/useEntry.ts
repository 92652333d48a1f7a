import { type ChangeEvent, type KeyboardEvent, useId, useState } from 'react';

/**
 * A text being typed. Enter and leaving the field take it; Escape gives it up; what cannot be taken stays,
 * with a sentence that says why.
 */
export function useEntry(shown: string, take: (text: string) => string | null) {
  const [typed, setTyped] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const faultId = useId();
  const forget = () => {
    setTyped(null);
    setFault(null);
  };
  const finish = () => {
    if (typed === null || typed === shown) return forget();
    const refusal = take(typed);
    setFault(refusal);
    if (refusal === null) setTyped(null);
  };
  return {
    fault,
    faultId,
    /** What stands in the field is being typed. */
    isTyped: typed !== null,
    input: {
      value: typed ?? shown,
      'aria-invalid': fault !== null,
      'aria-describedby': fault === null ? undefined : faultId,
      onChange: (event: ChangeEvent<HTMLInputElement | HTMLTextAreaElement>) => setTyped(event.target.value),
      onBlur: finish,
      onKeyDown: (event: KeyboardEvent<HTMLInputElement | HTMLTextAreaElement>) => {
        if (event.key === 'Enter' && event.currentTarget instanceof HTMLInputElement) finish();
        if (event.key === 'Escape' && typed !== null) {
          event.preventDefault();
          event.stopPropagation();
          forget();
        }
      },
    },
  };
}
