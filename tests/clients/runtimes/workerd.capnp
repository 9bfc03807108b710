using Workerd = import "/workerd/workerd.capnp";

const config :Workerd.Config = (
  services = [ (name = "ringtrue", worker = .ringtrue) ],
  sockets = [ (name = "http", address = "127.0.0.1:PORT", http = (), service = "ringtrue") ]
);

const ringtrue :Workerd.Worker = (
  modules = [ (name = "worker", esModule = embed "worker.mjs") ],
  compatibilityDate = "2026-01-01"
);
