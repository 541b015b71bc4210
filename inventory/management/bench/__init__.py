"""What `bench` measures, one workload a file: on a database of its own, with a ledger as long as asked."""
