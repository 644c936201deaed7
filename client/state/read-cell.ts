import type { ReadingAnswer } from '../../server/http/contract.ts';
import { ApiError, request } from './api.ts';
import { getState } from './app-state.ts';
import { projectPath } from './project-actions.ts';

export type ReadField = 'length' | 'width' | 'radius' | 'quantity';

/** What a cell of the open project would be read as; null when the server does not say. Changes nothing. */
export async function readCell(field: ReadField, text: string): Promise<ReadingAnswer | null> {
  const id = getState().project?.id;
  if (id === undefined) return null;
  try {
    return await request<ReadingAnswer>('POST', projectPath(id, 'reading'), { field, text });
  } catch (error) {
    if (error instanceof ApiError) return null;
    throw error;
  }
}
