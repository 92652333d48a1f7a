/** What the stage can give away: it alone has the picture. */
export interface Pictures {
  /** The picture as it stands, so many pixels wide, as a PNG. Words that lie over it are not in it. */
  png(widePx: number): Promise<Uint8Array<ArrayBuffer>>;
  /** The aircraft as glTF, binary. */
  glb(): Promise<Uint8Array<ArrayBuffer>>;
  /** Draws the picture again as it is: a film has only what is drawn while it runs. */
  paint(): void;
  readonly canvas: HTMLCanvasElement;
}

/** Carries the stage's pictures to whoever asks for them. */
export interface PictureDesk {
  /** Null while there is no stage. */
  now(): Pictures | null;
  /** The stage serves; returns how to stop. */
  serve(pictures: Pictures): () => void;
}

export function createPictureDesk(): PictureDesk {
  let serving: Pictures | null = null;
  return {
    now: () => serving,
    serve: (pictures) => {
      serving = pictures;
      return () => {
        if (serving === pictures) serving = null;
      };
    },
  };
}
