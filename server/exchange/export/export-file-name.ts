/** Longest part of a file name taken from the project's name, characters. */
const LONGEST_NAME = 80;

/**
 * What an exported file is called: the project's name, what it holds, the ending. Letters of any script stay; what
 * some file system refuses (\ / : * ? " < > | and control characters, dots and spaces at the ends) does not.
 *
 * Example: `exportFileName('Hall: bookcase', 'buy list', 'csv')` is "Hall bookcase - buy list.csv".
 */
export function exportFileName(projectName: string, content: string, ending: string): string {
  const name = [...projectName.replace(/[\p{C}\\/:*?"<>|]+/gu, ' ').replace(/\s+/g, ' ')]
    .slice(0, LONGEST_NAME)
    .join('')
    .replace(/^[\s.]+|[\s.]+$/g, '');
  const words = [name === '' ? 'project' : name, content].filter((word) => word !== '');
  return `${words.join(' - ')}.${ending}`;
}
