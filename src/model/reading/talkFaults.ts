import type { Checked } from './checked';
import type { Fault } from './fault';

/** What the schema cannot see in a talk: two slides with one id. What a slide refers to may be gone; it says so when it is shown. */
export function talkFaults({ aircraft, sound, tell }: Checked): readonly Fault[] {
  const { talk } = aircraft;
  if (!Array.isArray(talk)) return [];
  const seen = new Set<string>();
  return (talk as readonly { readonly id: string }[]).flatMap((slide, index) => {
    if (!sound('talk', index)) return [];
    const { id } = slide;
    if (seen.has(id)) {
      return [
        tell(
          ['talk', index, 'id'],
          `the id "${id}" is that of another slide.`,
          'an id of its own',
          `"${id}"`,
        ),
      ];
    }
    seen.add(id);
    return [];
  });
}
