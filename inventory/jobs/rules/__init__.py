"""Pure decisions about jobs: amounts by vehicle size, where steps lie in time, who is in whose bay."""
