import { createStore, type StoreApi } from 'zustand/vanilla';

/** One sentence that the person should know about the bench itself: a copy that could not be kept, say. */
export interface NoticeState {
  readonly text: string | null;
}

export type NoticeStore = StoreApi<NoticeState>;

export const createNoticeStore = (): NoticeStore => createStore<NoticeState>(() => ({ text: null }));
