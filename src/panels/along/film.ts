import type { Bench } from '../../store/bench';

/** How long the film of a burn is, s. */
export const FILM_S = 8;

const FRAMES_PER_S = 30;

const KINDS = ['video/webm;codecs=vp9', 'video/webm;codecs=vp8', 'video/webm'] as const;

/** Why there can be no film, in a sentence; null where there can. */
export function filmTrouble(bench: Bench): string | null {
  if (bench.balance.get().travel.length < 2)
    return 'Nothing burns on this aircraft, so there is no film to make.';
  if (!bench.pictures.now()) return 'The stage has no picture, so there is no film to make.';
  return filmKindTrouble();
}

/** The same of the browser alone. */
export function filmKindTrouble(): string | null {
  const canRecord = typeof MediaRecorder === 'function' && 'captureStream' in HTMLCanvasElement.prototype;
  if (!canRecord || !kind())
    return 'This browser cannot film its own pictures as WebM; Chrome, Edge and Firefox can.';
  return null;
}

const kind = () => KINDS.find((each) => MediaRecorder.isTypeSupported(each));

/**
 * Films the stage while the tanks go from full to dry, and puts the fuel back as it was. `onSeconds` is told how much is
 * filmed.
 */
export async function filmBurn(
  bench: Bench,
  signal: AbortSignal,
  onSeconds: (seconds: number) => void,
): Promise<Uint8Array<ArrayBuffer>> {
  const { view } = bench;
  const { fuelFraction } = view.getState();
  const play = () => {
    view.setState({ fuelFraction: 1, playing: false });
    return played((share) => {
      view.setState({ fuelFraction: 1 - share });
      onSeconds(share * FILM_S);
    }, signal);
  };
  try {
    return await filmed(bench, play);
  } finally {
    view.setState({ fuelFraction });
  }
}

/** How long the end of a film stands, ms: so that its last picture is on it. */
const END_MS = 400;

/** Films the stage for as long as something is played on it; also what stands still there takes its time. */
export async function filmed(
  { pictures }: Bench,
  play: () => Promise<void>,
): Promise<Uint8Array<ArrayBuffer>> {
  const stage = pictures.now();
  if (!stage) throw new Error('the stage has no picture');
  const mimeType = kind();
  const stream = stage.canvas.captureStream(FRAMES_PER_S);
  const recorder = new MediaRecorder(stream, {
    ...(mimeType && { mimeType }),
    videoBitsPerSecond: 8_000_000,
  });
  const pieces: Promise<ArrayBuffer>[] = [];
  recorder.ondataavailable = ({ data }) => void pieces.push(data.arrayBuffer());
  const ended = new Promise<void>((resolve) => {
    recorder.onstop = () => resolve();
  });
  const broken = new Promise<never>((_, reject) => {
    recorder.onerror = () => reject(new Error('the recording broke off'));
  });
  const painting = keepPainting(pictures);
  // The first pictures of a stage take long, and would be missing at the beginning.
  await painting.begun;
  recorder.start();
  const before = painting.count();
  try {
    await Promise.race([play().then(() => rest(END_MS)), broken]);
  } finally {
    painting.stop();
    if (recorder.state !== 'inactive') recorder.stop();
    for (const track of stream.getTracks()) track.stop();
  }
  await ended;
  const film = joined(await Promise.all(pieces));
  if (film.byteLength === 0) throw new Error('the browser recorded nothing');
  if (painting.count() === before)
    throw new Error('the browser drew nothing meanwhile; its window has to stay in sight');
  return film;
}

/** So many pictures are drawn before a film begins. */
const FIRST_PICTURES = 4;

/** Draws the stage again and again, also while nothing on it moves. */
function keepPainting(pictures: Bench['pictures']) {
  let painted = 0;
  let frame = 0;
  const begun = new Promise<void>((resolve) => {
    frame = requestAnimationFrame(function run() {
      pictures.now()?.paint();
      painted += 1;
      if (painted === FIRST_PICTURES) resolve();
      frame = requestAnimationFrame(run);
    });
  });
  return { begun, count: () => painted, stop: () => cancelAnimationFrame(frame) };
}

const rest = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/** Runs from 0 to 1 in the film’s time, frame by frame. */
const played = (show: (share: number) => void, signal: AbortSignal): Promise<void> =>
  new Promise((resolve, reject) => {
    const startMs = performance.now();
    requestAnimationFrame(function run(nowMs) {
      if (signal.aborted) return reject(new Error('it was called off'));
      const share = Math.min(1, Math.max(0, (nowMs - startMs) / 1000 / FILM_S));
      show(share);
      if (share < 1) requestAnimationFrame(run);
      else resolve();
    });
  });

function joined(pieces: readonly ArrayBuffer[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(pieces.reduce((sum, { byteLength }) => sum + byteLength, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(new Uint8Array(piece), at);
    at += piece.byteLength;
  }
  return whole;
}
