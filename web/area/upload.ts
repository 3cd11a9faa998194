/** Sends a table to the server. Only the older interface for requests tells how far a body is on its way. */
import { ApiFailure, answerWith, apiAddress, failureIn, type Table } from './api.ts';

export interface Upload {
  readonly done: Promise<Table>;
  cancel(): void;
}

/** Rejects with an ApiFailure; status 0 and no message where it was cancelled. */
export function uploadTable(file: Blob, name: string, onShare: (share: number) => void): Upload {
  const request = new XMLHttpRequest();
  const done = new Promise<Table>((resolve, reject) => {
    request.open('POST', `${apiAddress('tables')}?name=${encodeURIComponent(name)}`);
    request.setRequestHeader('Content-Type', 'application/octet-stream');
    request.responseType = 'json';
    request.upload.addEventListener('progress', ({ loaded, total }) => onShare(total > 0 ? loaded / total : 0));
    request.addEventListener('load', () => {
      const { status, response } = request as { status: number; response: unknown };
      try {
        if (status >= 300) throw failureIn(status, response);
        resolve(answerWith<Table>(response, 'columns'));
      } catch (failure) {
        reject(failure);
      }
    });
    request.addEventListener('error', () =>
      reject(new ApiFailure(0, 'The upload broke off. Nothing was kept; try again.')),
    );
    request.addEventListener('abort', () => reject(new ApiFailure(0, '')));
    request.send(file);
  });
  return { done, cancel: () => request.abort() };
}
