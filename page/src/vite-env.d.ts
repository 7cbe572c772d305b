/// <reference types="vite/client" />
declare module "*?worker&inline" {
  const HandWorker: { new (): Worker };
  export default HandWorker;
}
