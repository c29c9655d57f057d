/** A file's bytes as base64; null where it cannot be read. @example await fileBase64(new File(['km'], 'a.csv')) //=> 'a20=' */
export function fileBase64(file: File): Promise<string | null> {
  return new Promise((resolve) => {
    const reader = new FileReader();
    // An empty file comes as an address without a comma.
    reader.onload = () => resolve(typeof reader.result === 'string' ? reader.result.replace(/^[^,]*,?/, '') : null);
    reader.onerror = () => resolve(null);
    reader.readAsDataURL(file);
  });
}
