import type { StoreApi } from 'zustand/vanilla';
import { createCalmStore } from './calmStore';

export interface NoticeAction {
  readonly label: string;
  run(): void;
}

/** Something that the person should know about the bench itself: a copy that could not be kept, a file that was saved. */
export interface Notice {
  /** What it is about: a later notice about the same takes its place. */
  readonly about: string;
  readonly text: string;
  /** `done` goes away by itself. */
  readonly tone: 'done' | 'note' | 'bad';
  readonly actions?: readonly NoticeAction[];
}

export interface NoticeState {
  readonly notices: readonly Notice[];
}

export interface NoticeStore {
  readonly api: StoreApi<NoticeState>;
  tell(notice: Notice): void;
  /** Takes back what was said about something. */
  drop(about: string): void;
}

export function createNoticeStore(): NoticeStore {
  const api = createCalmStore<NoticeState>(() => ({ notices: [] }));
  const others = (about: string) => api.getState().notices.filter((notice) => notice.about !== about);
  return {
    api,
    tell: (notice) => {
      const last = api.getState().notices.find(({ about }) => about === notice.about);
      if (last?.text === notice.text && last.tone === notice.tone && notice.tone !== 'done') return;
      api.setState({ notices: [...others(notice.about), notice] });
    },
    drop: (about) => {
      const left = others(about);
      if (left.length < api.getState().notices.length) api.setState({ notices: left });
    },
  };
}
