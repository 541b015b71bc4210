"""The pre-job check: is the shelf right for this car, this step, this bay?"""
